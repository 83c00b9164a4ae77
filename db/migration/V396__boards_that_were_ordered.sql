create table board_order (
    id         bigint generated always as identity primary key,
    offer_id   bigint not null constraint board_order_offer references board_offer,
    cut_width_mm  double precision,
    cut_height_mm double precision,
    count      integer not null constraint board_order_count check (count between 1 and 1000),
    price      numeric(19, 4) not null constraint board_order_price check (price >= 0),
    currency   char(3) not null,
    ordered_on date not null,
    due_on     date not null,
    who        text not null,
    ended_at   timestamptz,
    ended_how  text constraint board_order_end check (ended_how in ('ARRIVED', 'NOT_COMING')),
    constraint board_order_cut check ((cut_width_mm is null) = (cut_height_mm is null)
        and (cut_width_mm is null or cut_width_mm > 0 and cut_height_mm > 0)),
    constraint board_order_days check (due_on >= ordered_on),
    constraint board_order_ended_somehow check ((ended_at is null) = (ended_how is null))
);
create index board_order_open on board_order (due_on, id) where ended_at is null;
comment on table board_order is 'Boards ordered from a dealer, or pieces cut to size, until they lie in the rack: they count when the next ones are advised.';
