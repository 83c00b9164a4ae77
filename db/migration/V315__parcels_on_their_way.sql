create table sending_way (
    way_id          bigint primary key constraint sending_way_of references delivery_way on delete cascade,
    kind            text not null constraint sending_way_kind check (kind in ('COLLECTION', 'PARCEL')),
    heaviest_g      integer constraint sending_way_heaviest check (heaviest_g > 0),
    longest_mm      double precision constraint sending_way_longest check (longest_mm > 0),
    length_girth_mm double precision constraint sending_way_length_girth check (length_girth_mm > 0),
    divisor         integer constraint sending_way_divisor check (divisor > 0),
    link_pattern    text not null default '' constraint sending_way_link check
                    (link_pattern = '' or link_pattern ~ '^https?://' and position('{code}' in link_pattern) > 0),
    collect_window  text not null default '',
    keeps_days      integer not null default 14 constraint sending_way_keeps check (keeps_days between 1 and 365)
);
comment on table sending_way is 'What a way of delivery takes and how a parcel on it is followed; a way without a row is a parcel way without limits.';
comment on column sending_way.divisor is 'Cubic centimetres that count as one kilogram; absent where the carrier does not weigh by volume.';
comment on column sending_way.link_pattern is 'Where a parcel can be followed, {code} stands for its tracking number; empty where it cannot.';
comment on column sending_way.keeps_days is 'How long something waits for collection before This week asks for it.';
insert into sending_way (way_id, kind)
select id, case when days_on_the_way = 0 then 'COLLECTION' else 'PARCEL' end from delivery_way;

create table sending_price (
    way_id          bigint not null constraint sending_price_way references sending_way on delete cascade,
    position        integer not null constraint sending_price_position check (position > 0),
    up_to_g         integer not null constraint sending_price_weight check (up_to_g > 0),
    longest_mm      double precision constraint sending_price_longest check (longest_mm > 0),
    middle_mm       double precision constraint sending_price_middle check (middle_mm > 0),
    shortest_mm     double precision constraint sending_price_shortest check (shortest_mm > 0),
    length_girth_mm double precision constraint sending_price_length_girth check (length_girth_mm > 0),
    price           numeric(19, 4) not null constraint sending_price_amount check (price >= 0),
    currency        char(3) not null,
    constraint sending_price_key primary key (way_id, position)
);
comment on table sending_price is 'What a parcel up to a weight and a size costs by a way, from the carrier''s price list.';

create table parcel (
    id           bigint generated always as identity primary key,
    customer_id  bigint not null constraint parcel_customer references customer,
    way_id       bigint constraint parcel_way references delivery_way,
    kind         text not null constraint parcel_kind check (kind in ('COLLECTION', 'PARCEL')),
    state        text not null constraint parcel_state check (state in ('PACKED', 'SENT', 'DELIVERED', 'READY', 'COLLECTED')),
    tracking     text not null default '',
    postage      numeric(19, 4) constraint parcel_postage check (postage >= 0),
    currency     char(3),
    weight_g     double precision constraint parcel_weight check (weight_g > 0),
    long_mm      double precision constraint parcel_long check (long_mm > 0),
    middle_mm    double precision constraint parcel_middle check (middle_mm > 0),
    short_mm     double precision constraint parcel_short check (short_mm > 0),
    packed_at    timestamptz not null,
    packed_by    text not null,
    left_at      timestamptz,
    arrived_at   timestamptz,
    reminded_at  timestamptz,
    constraint parcel_states_of_kind check (case kind when 'COLLECTION' then state in ('PACKED', 'READY', 'COLLECTED')
                                                      else state in ('PACKED', 'SENT', 'DELIVERED') end),
    constraint parcel_left check ((left_at is null) = (state = 'PACKED')),
    constraint parcel_arrived check ((arrived_at is not null) = (state in ('DELIVERED', 'COLLECTED'))),
    constraint parcel_postage_in_money check ((postage is null) = (currency is null))
);
comment on table parcel is 'What goes to a customer at once, or waits to be collected. left_at is when it was sent, or made ready to collect.';
create index parcel_open on parcel (state) where arrived_at is null;
create index parcel_by_customer on parcel (customer_id);
create index parcel_by_way on parcel (way_id);
create index parcel_by_tracking on parcel (tracking) where tracking <> '';

create table parcel_order (
    parcel_id bigint not null constraint parcel_order_parcel references parcel on delete cascade,
    order_id  bigint not null constraint parcel_order_order references customer_order,
    counts    boolean not null default true,
    constraint parcel_order_key primary key (parcel_id, order_id)
);
comment on table parcel_order is 'What is in a parcel. Of an order sent again after a return only the last parcel counts.';
create unique index parcel_order_once on parcel_order (order_id) where counts;
create index parcel_order_by_order on parcel_order (order_id);
