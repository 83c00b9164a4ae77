alter table cutting_job add column placed_at timestamptz;
comment on column cutting_job.placed_at is
    'When the place of the board was measured, or the board was moved; a frame traced before no longer counts.';

create or replace function cutting_start_is_checked() returns trigger language plpgsql as $$
begin
    if (select count(distinct item) from cutting_check
        where job_id = new.id
          and (item not in ('GAP_SET', 'AIR_ON') or new.dialled_at is null or checked_at >= new.dialled_at)
          and (item <> 'FRAME_TRACED' or new.placed_at is null or done and checked_at >= new.placed_at)) < 9 then
        raise exception 'Cut job % has unanswered checks', new.id using errcode = 'check_violation';
    end if;
    return new;
end $$;

create table placing_rules (
    one                  boolean primary key default true constraint placing_rules_one check (one),
    reading_mm           numeric(6, 3) not null constraint placing_rules_reading check (reading_mm between 0.01 and 3),
    repeatability_mm     numeric(6, 3) not null constraint placing_rules_repeatability check (repeatability_mm between 0 and 3),
    follow               boolean not null,
    follow_most_percent  numeric(5, 2) not null constraint placing_rules_follow check (follow_most_percent between 0 and 1)
);
comment on table placing_rules is 'How exactly marks are read at the laser, and whether a stretched print is cut stretched.';
insert into placing_rules (reading_mm, repeatability_mm, follow, follow_most_percent) values (0.3, 0.05, true, 0.5);

create table placing_position (
    id                 bigint generated always as identity constraint placing_position_pk primary key,
    job_id             bigint not null constraint placing_position_job references cutting_job,
    machine_id         bigint not null constraint placing_position_machine references cutting_machine,
    copy               integer not null constraint placing_position_copy check (copy >= 1),
    source             text not null constraint placing_position_source check (source in ('MARKS', 'JIG')),
    in_jig             boolean not null,
    quarter_turns      integer not null constraint placing_position_turns check (quarter_turns between 0 and 3),
    origin_corner      text not null,
    x_to_right         boolean not null,
    y_to_back          boolean not null,
    coordinate_unit    text not null,
    bed_width_mm       double precision not null constraint placing_position_bed_width check (bed_width_mm > 0),
    bed_height_mm      double precision not null constraint placing_position_bed_height check (bed_height_mm > 0),
    finished_width_mm  double precision not null constraint placing_position_width check (finished_width_mm > 0),
    finished_height_mm double precision not null constraint placing_position_height check (finished_height_mm > 0),
    overhang_mm        double precision not null constraint placing_position_overhang check (overhang_mm >= 0),
    a                  double precision not null,
    b                  double precision not null,
    dx_mm              double precision not null,
    dy_mm              double precision not null,
    follow             boolean not null,
    spare_mm           double precision not null,
    uncertainty_mm     double precision not null constraint placing_position_uncertainty check (uncertainty_mm >= 0),
    measured_by        text not null,
    measured_at        timestamptz not null,
    constraint placing_position_jig_in_jig check (source = 'MARKS' or in_jig)
);
comment on table placing_position is
    'Where a print was found to lie on the bed: shift, turn and stretch from the quarter-turned drawing to the bed. Rows are only added.';
create index placing_position_of_job on placing_position (job_id, id desc);
create index placing_position_of_machine on placing_position (machine_id, id desc);

create table placing_mark (
    position_id bigint not null constraint placing_mark_position references placing_position,
    mark        integer not null constraint placing_mark_number check (mark between 1 and 4),
    drawn_x_mm  double precision not null,
    drawn_y_mm  double precision not null,
    shown_x     double precision not null,
    shown_y     double precision not null,
    residual_mm double precision not null constraint placing_mark_residual check (residual_mm >= 0),
    constraint placing_mark_once primary key (position_id, mark)
);
comment on table placing_mark is 'What the machine showed at each mark, in its own unit, and how far that is from the place found.';

create table placing_moved (
    id       bigint generated always as identity constraint placing_moved_pk primary key,
    job_id   bigint not null constraint placing_moved_job references cutting_job,
    copy     integer not null constraint placing_moved_copy check (copy >= 1),
    after_id bigint not null constraint placing_moved_position references placing_position,
    moved_by text not null,
    moved_at timestamptz not null
);
comment on table placing_moved is 'A board that was moved after it was measured: its position no longer holds.';
create index placing_moved_of_job on placing_moved (job_id);

create table placing_given (
    id            bigint generated always as identity constraint placing_given_pk primary key,
    job_id        bigint not null constraint placing_given_job references cutting_job,
    position_id   bigint not null constraint placing_given_position references placing_position,
    purpose       text not null constraint placing_given_purpose check (purpose in ('CUT', 'FRAME', 'DRY_RUN')),
    format        text not null constraint placing_given_format check (format in ('SVG', 'DXF', 'PDF', 'GCODE')),
    file_name     text not null,
    sha256        char(64) not null constraint placing_given_digest check (sha256 ~ '^[0-9a-f]{64}$'),
    bytes         integer not null constraint placing_given_bytes check (bytes > 0),
    setting       text not null,
    speed_mm_s    double precision not null constraint placing_given_speed check (speed_mm_s > 0),
    power_percent numeric(6, 2) not null constraint placing_given_power check (power_percent >= 0 and power_percent <= 100),
    passes        integer not null constraint placing_given_passes check (passes between 1 and 20),
    air_assist    boolean not null,
    given_by      text not null,
    given_at      timestamptz not null
);
comment on table placing_given is 'Every file that was given out for a position, its digest and the setting in it. Rows are only added.';
create index placing_given_of_job on placing_given (job_id, id);

create trigger placing_position_only_added before update or delete on placing_position
    for each row execute function cutting_only_added();
create trigger placing_mark_only_added before update or delete on placing_mark
    for each row execute function cutting_only_added();
create trigger placing_moved_only_added before update or delete on placing_moved
    for each row execute function cutting_only_added();
create trigger placing_given_only_added before update or delete on placing_given
    for each row execute function cutting_only_added();
