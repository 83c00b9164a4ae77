create table lateness_cost (
    one     boolean primary key default true constraint lateness_cost_one check (one),
    at_all  numeric(8, 2) not null constraint lateness_cost_at_all check (at_all between 0 and 1000),
    per_day numeric(8, 2) not null constraint lateness_cost_per_day check (per_day between 0 and 1000),
    growth  numeric(8, 2) not null constraint lateness_cost_growth check (growth between 0.01 and 1000),
    started numeric(8, 2) not null constraint lateness_cost_started check (started between 1 and 1000),
    paid    numeric(8, 2) not null constraint lateness_cost_paid check (paid between 1 and 1000)
);
comment on table lateness_cost is 'One row: the points with which the sequence of the week counts a late order, and how much more begun and paid ones weigh.';

insert into lateness_cost (at_all, per_day, growth, started, paid) values (1, 2, 1, 2, 1.5);
