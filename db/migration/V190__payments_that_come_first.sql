create table payment_awaited (
    order_id bigint primary key constraint payment_awaited_order references customer_order,
    amount   numeric(14, 4) not null constraint payment_awaited_positive check (amount > 0),
    currency char(3) not null,
    asked_at timestamptz not null,
    asked_by text not null
);
comment on table payment_awaited is 'Orders whose work begins only when so much money has come for them.';
