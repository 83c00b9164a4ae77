alter table customer_order add column pattern_design integer not null default 1
    constraint customer_order_pattern_design_known check (pattern_design >= 1);
comment on column customer_order.pattern_design is
    'By which way of drawing the pattern was made. Orders from before the second way keep the first: what a customer approved is cut again as it was.';
