create table stage_done (
    id         bigint generated always as identity primary key,
    order_id   bigint not null constraint stage_done_order references customer_order,
    stage      text not null constraint stage_done_stage check (stage in
               ('PRINT','LAMINATE','SHEET_PREP','STICK','MASK','CUT','FINISH','PACK','HAND_OVER')),
    attempt    integer not null constraint stage_done_attempt check (attempt >= 1),
    done_at    timestamptz not null,
    done_by    text not null,
    device     text not null default '',
    minutes    numeric(9, 2) constraint stage_done_minutes check (minutes >= 0),
    constraint stage_done_once unique (order_id, stage, attempt)
);
comment on table stage_done is 'Stages that were ticked, once for each attempt: who, when, on which device, how long it took by the clock. Rows are only added.';

create table stage_undone (
    done_id   bigint primary key constraint stage_undone_done references stage_done,
    undone_at timestamptz not null,
    undone_by text not null
);
comment on table stage_undone is 'Ticks that were a mistake and were taken back; rows are only added.';

create table went_wrong (
    id              bigint generated always as identity primary key,
    order_id        bigint not null constraint went_wrong_order references customer_order,
    noticed_at      text not null constraint went_wrong_noticed check (noticed_at in
                    ('PRINT','LAMINATE','SHEET_PREP','STICK','MASK','CUT','FINISH','PACK','HAND_OVER')),
    again_from      text not null constraint went_wrong_again check (again_from in
                    ('PRINT','LAMINATE','SHEET_PREP','STICK','MASK','CUT','FINISH','PACK','HAND_OVER')),
    what            text not null constraint went_wrong_what check (btrim(what) <> ''),
    note            text not null default '',
    board_spoiled   boolean not null,
    minutes_lost    numeric(9, 2) not null constraint went_wrong_minutes check (minutes_lost >= 0),
    laser_minutes_lost numeric(9, 2) not null constraint went_wrong_laser_minutes check (laser_minutes_lost >= 0),
    material_lost   numeric(19, 6) not null constraint went_wrong_material check (material_lost >= 0),
    currency        char(3) not null,
    happened_at     timestamptz not null,
    told_by         text not null
);
comment on table went_wrong is 'What failed, at which stage, from where it is made again, and what was lost by it. Rows are only added.';
create index went_wrong_by_order on went_wrong (order_id, id);

create table stage_timer (
    id         bigint generated always as identity primary key,
    order_id   bigint not null constraint stage_timer_order references customer_order,
    stage      text not null,
    started_at timestamptz not null,
    started_by text not null,
    stopped_at timestamptz,
    stopped_by text,
    booked     boolean not null default false,
    constraint stage_timer_stop_told check ((stopped_at is null) = (stopped_by is null)),
    constraint stage_timer_forward check (stopped_at is null or stopped_at >= started_at)
);
comment on table stage_timer is 'Clocks of work at the bench; they run in the database, whatever happens to the browser. Booked: counted into a tick.';
create unique index stage_timer_one_runs on stage_timer (order_id) where stopped_at is null;
create index stage_timer_by_order on stage_timer (order_id, stage);

create table bench_photo (
    id         bigint generated always as identity primary key,
    order_id   bigint not null constraint bench_photo_order references customer_order,
    stage      text not null,
    wrong_id   bigint constraint bench_photo_wrong references went_wrong,
    media_type text not null constraint bench_photo_media check (media_type in ('image/jpeg', 'image/png', 'image/webp')),
    content    bytea not null constraint bench_photo_size check (octet_length(content) between 1 and 20000000),
    taken_at   timestamptz not null,
    taken_by   text not null
);
comment on table bench_photo is 'Photos taken at the bench.';
create index bench_photo_by_order on bench_photo (order_id, id);

create trigger stage_done_is_only_added_to before update or delete on stage_done
    for each row execute function refuse_change();
create trigger stage_undone_is_only_added_to before update or delete on stage_undone
    for each row execute function refuse_change();
create trigger went_wrong_is_only_added_to before update or delete on went_wrong
    for each row execute function refuse_change();

-- Whatever a screen believes: only the stage whose turn it is can be ticked, and attempts are counted without a gap.
create function stage_done_in_order() returns trigger language plpgsql as $$
declare
    turn text;
    before integer;
begin
    select next_stage into turn from customer_order where id = new.order_id for update;
    if turn is distinct from new.stage then
        raise exception 'order % is at stage %, not at %', new.order_id, turn, new.stage using errcode = 'check_violation';
    end if;
    select count(*) into before from stage_done where order_id = new.order_id and stage = new.stage;
    if new.attempt <> before + 1 then
        raise exception 'attempt % at % of order % does not follow %', new.attempt, new.stage, new.order_id, before
            using errcode = 'check_violation';
    end if;
    return new;
end $$;
create trigger stage_done_in_order before insert on stage_done for each row execute function stage_done_in_order();
