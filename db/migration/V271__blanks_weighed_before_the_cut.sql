create table blank_weighed (
    id          bigint generated always as identity constraint blank_weighed_pk primary key,
    order_id    bigint not null constraint blank_weighed_of_order references customer_order,
    grams       numeric(9, 2) not null constraint blank_weighed_grams_positive check (grams > 0),
    step_grams  numeric(7, 2) not null constraint blank_weighed_step_positive check (step_grams > 0),
    weighed_at  timestamptz not null,
    weighed_by  text not null
);
comment on table blank_weighed is
    'Blanks of one puzzle on the scale before they are cut, print on and no tape; the last line of an order counts. Lines are only ever added.';
create index blank_weighed_by_order on blank_weighed (order_id, id);
