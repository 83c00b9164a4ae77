create table pinned_day (
    order_id  bigint primary key constraint pinned_day_order references customer_order,
    day       date not null,
    pinned_by text not null,
    pinned_at timestamptz not null
);
comment on table pinned_day is 'Orders whose main work somebody has put on a day; the plan keeps it there.';

create table order_way (
    order_id bigint primary key constraint order_way_order references customer_order,
    way_id   bigint not null constraint order_way_way references delivery_way
);
comment on table order_way is 'The way of delivery chosen for an order; without a row it is the usual one.';
create index order_way_by_way on order_way (way_id);

create table week_feed (
    id         bigint generated always as identity primary key,
    token_hash bytea not null constraint week_feed_token_once unique,
    made_by    text not null,
    made_at    timestamptz not null,
    ended_at   timestamptz
);
comment on table week_feed is 'Private links to the calendar of due dates; only a hash of the secret part is kept.';
