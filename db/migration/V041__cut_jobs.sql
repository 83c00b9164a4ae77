create table cutting_job (
    id               bigint generated always as identity primary key,
    order_id         bigint,
    label            text not null constraint cutting_job_label check (btrim(label) <> ''),
    setting_id       bigint not null constraint cutting_job_setting references cutting_setting,
    speed_mm_s       double precision not null constraint cutting_job_speed check (speed_mm_s > 0),
    power_percent    numeric(6, 2) not null constraint cutting_job_power check (power_percent > 0 and power_percent <= 100),
    passes           integer not null constraint cutting_job_passes check (passes between 1 and 20),
    air_assist       boolean not null,
    gap_mm           double precision not null constraint cutting_job_gap check (gap_mm >= 0),
    machine_id       bigint not null constraint cutting_job_machine references cutting_machine,
    board_past       text not null constraint cutting_job_board_past check (board_past in ('CLEAN', 'PAINTED', 'WET_GLUE', 'UNKNOWN')),
    film_name        text not null default '',
    film             text not null constraint cutting_job_film check (film in ('SAFE', 'PVC', 'WET_GLUE', 'UNKNOWN')),
    estimated_seconds double precision constraint cutting_job_estimate check (estimated_seconds > 0),
    prepared_by      text not null,
    prepared_at      timestamptz not null,
    started_by       text,
    started_at       timestamptz,
    ended_by         text,
    ended_at         timestamptz,
    broken_off       boolean not null default false,
    gap_measured_mm  double precision constraint cutting_job_gap_measured check (gap_measured_mm >= 0),
    trial_id         bigint constraint cutting_job_trial references cutting_trial constraint cutting_job_trial_once unique,
    note             text not null default '',
    constraint cutting_job_start_told check ((started_at is null) = (started_by is null)),
    constraint cutting_job_end_told check ((ended_at is null) = (ended_by is null)),
    constraint cutting_job_end_after_start check (ended_at is null or started_at is null or ended_at >= started_at),
    constraint cutting_job_unstarted_is_broken_off check (ended_at is null or started_at is not null or broken_off),
    constraint cutting_job_forbidden_material check (started_at is null or (board_past = 'CLEAN' and film = 'SAFE'))
);
comment on table cutting_job is 'A cut from its checklist to its outcome. What must never be cut cannot be started.';
create unique index cutting_job_one_runs_on_a_machine on cutting_job (machine_id)
    where started_at is not null and ended_at is null;
create unique index cutting_job_one_open_for_an_order on cutting_job (order_id) where ended_at is null;
create index cutting_job_of_machine on cutting_job (machine_id, ended_at desc);

create table cutting_check (
    id         bigint generated always as identity primary key,
    job_id     bigint not null constraint cutting_check_job references cutting_job,
    item       text not null constraint cutting_check_item check (item in ('FRAME_TRACED', 'BOARD_FLAT_AND_HELD', 'MASKED',
               'GAP_SET', 'AIR_ON', 'EXTRACTION_ON', 'EYEWEAR', 'EXTINGUISHER', 'NEVER_ALONE')),
    done       boolean not null,
    reason     text not null default '',
    checked_by text not null,
    checked_at timestamptz not null,
    constraint cutting_check_skipped_with_reason check (done or char_length(btrim(reason)) >= 10)
);
comment on table cutting_check is 'What was checked before a cut, or skipped and why; the newest row of an item counts. Rows are only added.';
create index cutting_check_of_job on cutting_check (job_id, item, id desc);
create trigger cutting_check_only_added before update or delete on cutting_check
    for each row execute function cutting_only_added();

create function cutting_start_is_checked() returns trigger language plpgsql as $$
begin
    if (select count(distinct item) from cutting_check where job_id = new.id) < 9 then
        raise exception 'Cut job % has unanswered checks', new.id using errcode = 'check_violation';
    end if;
    return new;
end $$;
create trigger cutting_job_start_is_checked before update on cutting_job
    for each row when (old.started_at is null and new.started_at is not null)
    execute function cutting_start_is_checked();

create function cutting_ended_stays() returns trigger language plpgsql as $$
begin
    raise exception 'Cut job % has ended and stays as it is', old.id using errcode = 'restrict_violation';
end $$;
create trigger cutting_job_ended_stays before update on cutting_job
    for each row when (old.ended_at is not null) execute function cutting_ended_stays();
create trigger cutting_job_never_removed before delete on cutting_job
    for each row execute function cutting_only_added();
