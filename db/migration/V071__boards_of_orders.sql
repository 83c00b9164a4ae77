create table order_blank (
    order_id  bigint not null constraint order_blank_order references customer_order,
    position  integer not null constraint order_blank_position check (position > 0),
    across    integer not null constraint order_blank_across check (across > 0),
    down      integer not null constraint order_blank_down check (down > 0),
    width_mm  double precision not null constraint order_blank_width check (width_mm > 0),
    height_mm double precision not null constraint order_blank_height check (height_mm > 0),
    x_mm      double precision not null,
    y_mm      double precision not null,
    degrees   double precision not null,
    sheet_id  bigint constraint order_blank_sheet references sheet,
    offer_id  bigint constraint order_blank_offer references board_offer,
    constraint order_blank_key primary key (order_id, position),
    constraint order_blank_from_somewhere check ((sheet_id is null) <> (offer_id is null))
);
comment on table order_blank is 'The boards chosen for an order: a place on a sheet of the rack, or a board to be bought.';
create index order_blank_by_sheet on order_blank (sheet_id) where sheet_id is not null;

alter table sheet_reservation add constraint sheet_reservation_order foreign key (order_id) references customer_order;
