create table complaint (
    id           bigint generated always as identity primary key,
    order_id     bigint not null constraint complaint_order references customer_order,
    reported_at  timestamptz not null,
    reported_by  text not null,
    by_customer  boolean not null,
    reason       text not null constraint complaint_reason check (reason in ('PIECE_MISSING', 'PIECE_BROKEN', 'PRINT_FAULT',
                 'PEELING', 'CHARRED', 'DOES_NOT_FIT', 'DAMAGED_ON_THE_WAY', 'WRONG_PUZZLE', 'CHANGED_MIND', 'OTHER')),
    stage        text not null constraint complaint_stage check (stage in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK', 'MASK',
                 'CUT', 'FINISH', 'PACK', 'HAND_OVER')),
    words        text not null default '',
    board        text not null,
    setting      text not null default '',
    remedy       text constraint complaint_remedy check (remedy in ('REMAKE', 'REFUND', 'PIECE_AGAIN', 'NOTHING')),
    postage_by   text constraint complaint_postage_by check (postage_by in ('WORKSHOP', 'CUSTOMER')),
    postage      numeric(19, 4) constraint complaint_postage check (postage >= 0),
    currency     char(3),
    credit_id    bigint constraint complaint_credit references invoice,
    answer       text not null default '',
    decided_at   timestamptz,
    decided_by   text,
    constraint complaint_decided check ((remedy is null) = (decided_at is null) and (remedy is null) = (decided_by is null)),
    constraint complaint_postage_in_money check ((postage is null) = (currency is null))
);
comment on table complaint is 'What a customer found wrong, or why something came back, and what was done about it.';
comment on column complaint.stage is 'Where it most likely arose.';
comment on column complaint.board is 'What the puzzle was cut from, in words of then.';
comment on column complaint.setting is 'With what it was cut, in words of then; empty where no cut is on record.';
comment on column complaint.postage is 'What sending back and again costs the workshop; none where the customer bears it.';
create index complaint_by_order on complaint (order_id);
create index complaint_by_day on complaint (reported_at);
create index complaint_undecided on complaint (reported_at) where remedy is null;
create index complaint_by_credit on complaint (credit_id) where credit_id is not null;

create table complaint_photo (
    id           bigint generated always as identity primary key,
    complaint_id bigint not null constraint complaint_photo_of references complaint,
    media_type   text not null,
    content      bytea not null,
    taken_at     timestamptz not null,
    taken_by     text not null
);
comment on table complaint_photo is 'What it looks like.';
create index complaint_photo_by_complaint on complaint_photo (complaint_id);

create table all_is_well (
    order_id bigint primary key constraint all_is_well_order references customer_order,
    said_at  timestamptz not null
);
comment on table all_is_well is 'The customer was asked whether all is well, and said yes.';

create view order_left as
select id as order_id, board_material, board_thickness_mm, handed_over_at
  from customer_order where handed_over_at is not null;
comment on view order_left is 'What left the house on which board, for the share of it that came back. Read by reports.';

create or replace view order_took as
select o.id as order_id, o.number, c.name as customer, o.state, o.confirmed_at, o.handed_over_at, o.quantity,
       o.width_mm, o.height_mm, coalesce(o.pieces, o.piece_columns * o.piece_rows) as pieces, o.currency, o.price_net,
       o.laser_minutes as laser_estimate, o.kept_price,
       (select sum(extract(epoch from ended_at - started_at) / 60)::double precision from cutting_job j
         where j.order_id = o.id and j.started_at is not null and j.ended_at is not null
           and (j.broken_off or j.trial_id is not null)) as laser_minutes,
       coalesce((select sum(w.material_lost) from went_wrong w where w.order_id = o.id and w.currency = o.currency), 0)
         + coalesce((select sum(b.postage) from complaint b where b.order_id = o.id and b.currency = o.currency
                        and b.postage_by = 'WORKSHOP'), 0) as material_lost,
       (select count(*) from went_wrong w where w.order_id = o.id) as mishaps,
       coalesce((select sum(w.minutes_lost) from went_wrong w where w.order_id = o.id), 0)::double precision as minutes_lost,
       (select max(w.happened_at) from went_wrong w where w.order_id = o.id
           and w.again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK')) as print_lost_at,
       o.version
  from customer_order o join customer c on c.id = o.customer_id;
