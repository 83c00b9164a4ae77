create table cutting_machine (
    id                     bigint generated always as identity primary key,
    name                   text not null constraint cutting_machine_name_unique unique
                           constraint cutting_machine_name_given check (btrim(name) <> ''),
    bed_width_mm           double precision not null constraint cutting_machine_bed_width check (bed_width_mm > 0),
    bed_height_mm          double precision not null constraint cutting_machine_bed_height check (bed_height_mm > 0),
    power_w                double precision not null constraint cutting_machine_power check (power_w > 0 and power_w <= 10000),
    wavelength_nm          integer not null constraint cutting_machine_wavelength check (wavelength_nm between 180 and 20000),
    lens_gap_mm            double precision not null constraint cutting_machine_gap check (lens_gap_mm >= 0),
    kerf_mm                double precision not null constraint cutting_machine_kerf check (kerf_mm >= 0),
    max_travel_mm_s        double precision not null constraint cutting_machine_travel check (max_travel_mm_s > 0),
    max_cut_mm_s           double precision not null constraint cutting_machine_cut check (max_cut_mm_s > 0),
    acceleration_mm_s2     double precision not null constraint cutting_machine_acceleration check (acceleration_mm_s2 > 0),
    corner_deviation_mm    double precision not null constraint cutting_machine_corner check (corner_deviation_mm >= 0),
    bow_limit_mm           double precision not null constraint cutting_machine_bow check (bow_limit_mm >= 0),
    set_up_minutes         double precision not null constraint cutting_machine_set_up check (set_up_minutes >= 0),
    pass_pause_seconds     double precision not null constraint cutting_machine_pause check (pass_pause_seconds >= 0),
    currency               char(3) not null,
    price                  numeric(19, 6) not null constraint cutting_machine_price check (price >= 0),
    residual               numeric(19, 6) not null constraint cutting_machine_residual check (residual >= 0),
    life_hours             double precision not null constraint cutting_machine_life check (life_hours > 0),
    power_kw               double precision not null constraint cutting_machine_kw check (power_kw >= 0),
    yearly_upkeep          numeric(19, 6) not null constraint cutting_machine_upkeep check (yearly_upkeep >= 0),
    yearly_hours           double precision not null constraint cutting_machine_year check (yearly_hours > 0),
    standard               boolean not null default false,
    retired                boolean not null default false,
    version                bigint not null default 0,
    constraint cutting_machine_residual_at_most_price check (residual <= price),
    constraint cutting_machine_standard_in_use check (not (standard and retired))
);
comment on table cutting_machine is 'The laser cutters of the workshop and what an hour of each is made of.';
create unique index cutting_machine_one_standard on cutting_machine (standard) where standard;

create table cutting_wear_part (
    machine_id bigint not null constraint cutting_wear_part_machine references cutting_machine,
    name       text not null constraint cutting_wear_part_name check (btrim(name) <> ''),
    price      numeric(19, 6) not null constraint cutting_wear_part_price check (price >= 0),
    life_hours double precision not null constraint cutting_wear_part_life check (life_hours > 0),
    constraint cutting_wear_part_once primary key (machine_id, name)
);
comment on table cutting_wear_part is 'What is used up on a machine by the hour: lenses, filters, beds.';

create table cutting_setting (
    id           bigint generated always as identity primary key,
    machine_id   bigint not null constraint cutting_setting_machine references cutting_machine,
    material     text not null constraint cutting_setting_material check (btrim(material) <> ''),
    grade        text not null constraint cutting_setting_grade check (btrim(grade) <> ''),
    thickness_mm numeric(6, 2) not null constraint cutting_setting_thickness check (thickness_mm > 0 and thickness_mm <= 100),
    constraint cutting_setting_once unique (machine_id, material, grade, thickness_mm)
);
comment on table cutting_setting is 'One machine on one kind of board; what is dialled in is the newest row of cutting_setting_choice.';

create table cutting_setting_choice (
    id            bigint generated always as identity primary key,
    setting_id    bigint not null constraint cutting_choice_setting references cutting_setting,
    speed_mm_s    double precision not null constraint cutting_choice_speed check (speed_mm_s > 0),
    power_percent numeric(6, 2) not null constraint cutting_choice_power check (power_percent > 0 and power_percent <= 100),
    passes        integer not null constraint cutting_choice_passes check (passes between 1 and 20),
    air_assist    boolean not null,
    gap_mm        double precision not null constraint cutting_choice_gap check (gap_mm >= 0),
    chosen_by     text not null,
    chosen_at     timestamptz not null
);
comment on table cutting_setting_choice is 'What was dialled in from when on, and who chose it. Rows are only added.';
create index cutting_setting_choice_newest on cutting_setting_choice (setting_id, id desc);

create table cutting_trial (
    id              bigint generated always as identity primary key,
    setting_id      bigint not null constraint cutting_trial_setting references cutting_setting,
    speed_mm_s      double precision not null constraint cutting_trial_speed check (speed_mm_s > 0),
    power_percent   numeric(6, 2) not null constraint cutting_trial_power check (power_percent > 0 and power_percent <= 100),
    passes          integer not null constraint cutting_trial_passes check (passes between 1 and 20),
    air_assist      boolean not null,
    gap_mm          double precision not null constraint cutting_trial_gap check (gap_mm >= 0),
    result          text not null constraint cutting_trial_result check (result in ('THROUGH', 'PARTLY', 'NOT_THROUGH')),
    charring        smallint not null constraint cutting_trial_charring check (charring between 0 and 4),
    gap_measured_mm double precision constraint cutting_trial_gap_measured check (gap_measured_mm >= 0),
    note            text not null default '',
    source          text not null constraint cutting_trial_source check (source in ('TRY', 'TEST_CARD', 'CUT')),
    made_by         text not null,
    made_at         timestamptz not null
);
comment on table cutting_trial is 'Every try and every real cut as evidence for a setting. Rows are only added.';
create index cutting_trial_of_setting on cutting_trial (setting_id, id);

create table cutting_trial_photo (
    trial_id   bigint primary key constraint cutting_photo_trial references cutting_trial,
    media_type text not null constraint cutting_photo_type check (media_type in ('image/jpeg', 'image/png', 'image/webp')),
    picture    bytea not null constraint cutting_photo_size check (octet_length(picture) between 1 and 20000000)
);
comment on table cutting_trial_photo is 'A photo of a trial''s edge.';

create function cutting_only_added() returns trigger language plpgsql as $$
begin
    raise exception 'Rows of % are only added, never changed or removed', tg_table_name using errcode = 'restrict_violation';
end $$;
create trigger cutting_trial_only_added before update or delete on cutting_trial
    for each row execute function cutting_only_added();
create trigger cutting_setting_choice_only_added before update or delete on cutting_setting_choice
    for each row execute function cutting_only_added();
create trigger cutting_trial_photo_only_added before update or delete on cutting_trial_photo
    for each row execute function cutting_only_added();
