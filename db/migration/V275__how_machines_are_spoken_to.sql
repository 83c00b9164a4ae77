alter table cutting_machine
    add column origin_corner text not null default 'FRONT_LEFT'
        constraint cutting_machine_origin check (origin_corner in ('FRONT_LEFT', 'FRONT_RIGHT', 'BACK_LEFT', 'BACK_RIGHT')),
    add column x_to_right boolean not null default true,
    add column y_to_back boolean not null default true,
    add column coordinate_unit text not null default 'MM'
        constraint cutting_machine_coordinate_unit check (coordinate_unit in ('MM', 'INCH')),
    add column feed_unit text not null default 'MM_PER_MINUTE'
        constraint cutting_machine_feed_unit check (feed_unit in ('MM_PER_MINUTE', 'MM_PER_SECOND', 'INCH_PER_MINUTE')),
    add column takes_gcode boolean not null default false,
    add column power_follows_speed boolean not null default true,
    add column full_power integer not null default 1000
        constraint cutting_machine_full_power check (full_power between 1 and 100000),
    add column air_word text not null default 'M8' constraint cutting_machine_air_word check (air_word in ('', 'M7', 'M8')),
    add column dwell_in_seconds boolean not null default true,
    add column frame_power_percent numeric(5, 2) not null default 1
        constraint cutting_machine_frame_power check (frame_power_percent >= 0 and frame_power_percent <= 20);
comment on column cutting_machine.origin_corner is 'Where X and Y are 0 on the bed, seen from the front.';
comment on column cutting_machine.frame_power_percent is
    'Power at which the frame is traced, set by the owner; 0: the beam stays off and only the pilot dot is followed.';
