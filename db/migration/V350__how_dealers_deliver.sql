create table board_dealing (
    offer_id       bigint primary key constraint board_dealing_offer references board_offer on delete cascade,
    delivery_weeks smallint constraint board_dealing_weeks check (delivery_weeks between 0 and 26),
    cut_fee        numeric(19, 4) constraint board_dealing_fee check (cut_fee >= 0)
);
comment on table board_dealing is 'How a board that can be bought comes: after how many weeks (null: as the rules of wood say), and what its dealer takes for each piece cut to size beside its share of the board (null: whole boards only), in the currency of the board.';
