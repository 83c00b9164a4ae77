create table sheet_follow (
    id         bigint generated always as identity primary key,
    sheet_id   bigint not null constraint sheet_follow_sheet references sheet,
    order_id   bigint not null constraint sheet_follow_order references customer_order,
    position   integer not null constraint sheet_follow_position check (position > 0),
    x_mm       double precision not null,
    y_mm       double precision not null,
    degrees    double precision not null constraint sheet_follow_angle check (degrees >= 0 and degrees < 180),
    width_mm   double precision not null constraint sheet_follow_width check (width_mm > 0),
    height_mm  double precision not null constraint sheet_follow_height check (height_mm > 0),
    who        text not null,
    planned_at timestamptz not null,
    ended_at   timestamptz,
    ended_how  text constraint sheet_follow_end check (ended_how in ('HELD', 'DROPPED')),
    given      bigint constraint sheet_follow_given references sheet,
    constraint sheet_follow_ended_somehow check ((ended_at is null) = (ended_how is null)),
    constraint sheet_follow_given_when_held check ((given is not null) = (ended_how is not distinct from 'HELD'))
);
create unique index sheet_follow_once on sheet_follow (order_id, position) where ended_at is null;
create index sheet_follow_by_sheet on sheet_follow (sheet_id) where ended_at is null;
create index sheet_follow_by_given on sheet_follow (given) where given is not null;
comment on table sheet_follow is
    'Blanks planned on what a held sheet leaves: once its blank is cut they are held on the offcut that has their place.';
