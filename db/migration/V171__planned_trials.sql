create table cutting_planned_trial (
    id         bigint generated always as identity primary key,
    setting_id bigint not null constraint cutting_planned_trial_setting references cutting_setting,
    order_id   bigint not null constraint cutting_planned_trial_order references customer_order,
    label      text not null constraint cutting_planned_trial_label check (btrim(label) <> ''),
    planned_by text not null,
    planned_at timestamptz not null,
    closed_at  timestamptz,
    closed_how text constraint cutting_planned_trial_how check (closed_how in ('PROVEN', 'CUT', 'GIVEN_UP')),
    constraint cutting_planned_trial_closed_told check ((closed_at is null) = (closed_how is null)),
    constraint cutting_planned_trial_after_planning check (closed_at is null or closed_at >= planned_at)
);
comment on table cutting_planned_trial is
    'An order was confirmed on settings that are not proven: a trial is to be made before its cut. Closed when they are proven or the order is cut.';
create unique index cutting_planned_trial_open_once on cutting_planned_trial (order_id) where closed_at is null;
create index cutting_planned_trial_of_setting on cutting_planned_trial (setting_id) where closed_at is null;
