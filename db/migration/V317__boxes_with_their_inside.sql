create table box_size (
    item_id     bigint primary key constraint box_size_item references supply_item,
    long_mm     double precision not null constraint box_size_long check (long_mm between 1 and 3000),
    middle_mm   double precision not null constraint box_size_middle check (middle_mm between 1 and 3000),
    short_mm    double precision not null constraint box_size_short check (short_mm between 1 and 3000),
    wall_mm     double precision not null constraint box_size_wall check (wall_mm between 0 and 50),
    empty_g     double precision not null constraint box_size_empty check (empty_g > 0),
    factor      double precision constraint box_size_factor check (factor between 1 and 20),
    measured_at timestamptz,
    measured_by text,
    measured_of text,
    constraint box_size_sides check (long_mm >= middle_mm and middle_mm >= short_mm),
    constraint box_size_measured check ((factor is null) = (measured_at is null))
);
comment on table box_size is 'The inside of boxes and bags among the supplies.';
comment on column box_size.factor is 'Room that loose pieces take in it, as a multiple of their own volume; measured once with a real puzzle.';

create table order_box (
    order_id bigint primary key constraint order_box_order references customer_order,
    item_id  bigint not null constraint order_box_item references box_size
);
comment on table order_box is 'A box somebody has chosen for an order; without a row the smallest that takes it is used.';
create index order_box_by_item on order_box (item_id);
