create table customer (
    id         bigint generated always as identity primary key,
    name       text not null constraint customer_name_given check (btrim(name) <> ''),
    contact    text not null default '',
    address    text not null default '',
    created_at timestamptz not null default now()
);
comment on table customer is 'Who puzzles are made for.';
create index customer_by_name on customer (lower(name) text_pattern_ops);

create table order_number_counter (
    year integer primary key,
    last integer not null constraint order_number_counter_positive check (last > 0)
);
comment on table order_number_counter is 'The last order number given in a year; its row is locked while one is taken.';

create table customer_order (
    id                  bigint generated always as identity primary key,
    number              text not null constraint customer_order_number unique,
    customer_id         bigint not null constraint customer_order_customer references customer,
    state               text not null constraint customer_order_state check
                        (state in ('QUOTE', 'CONFIRMED', 'HANDED_OVER', 'CLOSED', 'CANCELLED')),
    quantity            integer not null constraint customer_order_quantity check (quantity between 1 and 1000),

    width_mm            double precision not null constraint customer_order_width check (width_mm between 10 and 5000),
    height_mm           double precision not null constraint customer_order_height check (height_mm between 10 and 5000),
    piece_columns       integer not null,
    piece_rows          integer not null,
    pattern_seed        bigint not null,
    cut_style           text not null,
    outline_kind        text not null,
    outline_measure_mm  double precision not null constraint customer_order_outline check (outline_measure_mm >= 0),
    kerf_mm             double precision not null constraint customer_order_kerf check (kerf_mm >= 0),
    intended_age        text not null constraint customer_order_age check
                        (intended_age in ('UNDER_3', 'FROM_3', 'FROM_6', 'GROWN_UPS')),
    tray                boolean not null,

    board_material      text not null,
    board_grade         text not null,
    board_thickness_mm  double precision not null constraint customer_order_thickness check (board_thickness_mm between 0.5 and 20),

    picture_id          uuid constraint customer_order_picture references picture,
    crop_left           double precision,
    crop_top            double precision,
    crop_width          double precision,
    crop_height         double precision,
    crop_turns          integer,
    crop_fit            text,
    crop_border         text,
    crop_edge           text,
    soft_accepted       text not null default '',
    approved_at         timestamptz,
    approved_by         text,

    wanted_by           date,
    promised_on         date,
    rush                boolean not null,
    laser_minutes       double precision not null constraint customer_order_laser check (laser_minutes >= 0),
    price_net           numeric(19, 4) not null,
    price_vat           numeric(19, 4) not null,
    price_gross         numeric(19, 4) not null constraint customer_order_price check (price_gross >= 0),
    cost                numeric(19, 4) not null,
    currency            char(3) not null,
    kept_price          jsonb not null,
    delivery_way        bigint,
    valid_until         date not null,
    next_stage          text constraint customer_order_next_stage check (next_stage in
                        ('PRINT','LAMINATE','SHEET_PREP','STICK','MASK','CUT','FINISH','PACK','HAND_OVER')),
    note                text not null default '',
    created_at          timestamptz not null,
    created_by          text not null,
    confirmed_at        timestamptz,
    handed_over_at      timestamptz,
    closed_at           timestamptz,
    version             bigint not null default 0,

    constraint customer_order_pieces check (piece_columns >= 1 and piece_rows >= 1
        and piece_columns * piece_rows between 2 and 2000),
    constraint customer_order_price_adds_up check (price_net + price_vat = price_gross),
    constraint customer_order_crop_whole check ((picture_id is null) = (crop_left is null)
        and (picture_id is null) = (crop_width is null)),
    constraint customer_order_stage_while_confirmed check ((state = 'CONFIRMED') = (next_stage is not null)),
    constraint customer_order_approval check ((approved_at is null) = (approved_by is null)),
    constraint customer_order_approved_before_print check
        (next_stage is null or next_stage = 'PRINT' or approved_at is not null)
);
comment on table customer_order is 'One puzzle wish, made a number of times, from quote to paid. next_stage is what the bench does next.';
create index customer_order_open on customer_order (promised_on) where state = 'CONFIRMED';
create index customer_order_by_customer on customer_order (customer_id);
create index customer_order_by_state on customer_order (state, created_at desc);
create index customer_order_by_picture on customer_order (picture_id);

create table order_history (
    id        bigint generated always as identity primary key,
    order_id  bigint not null constraint order_history_order references customer_order,
    at        timestamptz not null,
    who       text not null,
    text_key  text not null,
    arguments text[] not null
);
comment on table order_history is 'What happened to an order, when, by whom; lines are only ever added.';
create index order_history_by_order on order_history (order_id, id);

create function refuse_change() returns trigger language plpgsql as $$
begin
    raise exception 'history is only added to' using errcode = 'restrict_violation';
end $$;
create trigger order_history_is_only_added_to before update or delete on order_history
    for each row execute function refuse_change();
