create table pinned_day (
    order_id  bigint primary key constraint pinned_day_order references customer_order,
    day       date not null,
    pinned_by text not null,
    pinned_at timestamptz not null
);
comment on table pinned_day is 'Orders whose main work somebody has put on a day; the plan keeps it there.';

-- Orders name their way of delivery by its number; from here on it must be one that is kept.
alter table customer_order add constraint customer_order_delivery_way
    foreign key (delivery_way) references delivery_way;
create index customer_order_by_way on customer_order (delivery_way);

create table week_feed (
    id         bigint generated always as identity primary key,
    token_hash bytea not null constraint week_feed_token_once unique,
    made_by    text not null,
    made_at    timestamptz not null,
    ended_at   timestamptz
);
comment on table week_feed is 'Private links to the calendar of due dates; only a hash of the secret part is kept.';
