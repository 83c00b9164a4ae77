create table workshop_profile (
    id            smallint primary key default 1 constraint workshop_profile_one_row check (id = 1),
    name          text not null constraint workshop_profile_name_given check (name <> ''),
    address       text not null default '',
    email         text not null default '',
    phone         text not null default '',
    currency      char(3) not null,
    unit_system   text not null constraint workshop_profile_units check (unit_system in ('MILLIMETRES', 'INCHES')),
    time_zone     text not null,
    public_url    text not null default '',
    version       bigint not null default 0
);
comment on table workshop_profile is 'Who the workshop is and how it counts: one row, absent until the first set-up.';

create table trade_numbers (
    id                        smallint primary key default 1 constraint trade_numbers_one_row check (id = 1),
    overhang_mm               double precision not null constraint trade_overhang check (overhang_mm between 0 and 20),
    hold_down_margin_mm       double precision not null constraint trade_margin check (hold_down_margin_mm between 0 and 100),
    stick_shift_mm            double precision not null constraint trade_shift check (stick_shift_mm between 0 and 20),
    stick_turn_degrees        double precision not null constraint trade_turn check (stick_turn_degrees between 0 and 5),
    sharp_ppi                 integer not null,
    good_ppi                  integer not null,
    soft_ppi                  integer not null,
    smallest_piece_mm         double precision not null constraint trade_piece check (smallest_piece_mm between 5 and 50),
    board_thickness_mm        double precision not null constraint trade_thickness check (board_thickness_mm between 0.5 and 20),
    smallest_useful_width_mm  double precision not null constraint trade_useful_width check (smallest_useful_width_mm > 0),
    smallest_useful_height_mm double precision not null constraint trade_useful_height check (smallest_useful_height_mm > 0),
    buffer_days               integer not null constraint trade_buffer check (buffer_days between 0 and 30),
    quote_valid_days          integer not null constraint trade_validity check (quote_valid_days between 1 and 365),
    outline_last              boolean not null,
    constraint trade_ppi_order check (soft_ppi > 0 and soft_ppi < good_ppi and good_ppi < sharp_ppi)
);
comment on table trade_numbers is 'The trade''s usual numbers as this workshop uses them; one row, editable in Set-up.';
insert into trade_numbers values (1, 3, 8, 1.5, 0.5, 300, 200, 150, 10, 3, 120, 90, 1, 14, true);

create table stage_standard (
    stage              text primary key constraint stage_standard_stage check (stage in
                       ('PRINT','LAMINATE','SHEET_PREP','STICK','MASK','CUT','FINISH','PACK','HAND_OVER')),
    set_up_minutes     double precision not null constraint stage_set_up check (set_up_minutes >= 0),
    per_puzzle_minutes double precision not null constraint stage_per_puzzle check (per_puzzle_minutes >= 0),
    per_piece_seconds  double precision not null constraint stage_per_piece check (per_piece_seconds >= 0),
    waiting_hours      double precision not null constraint stage_waiting check (waiting_hours between 0 and 240),
    reject_percent     numeric(5, 2) not null constraint stage_rejects check (reject_percent >= 0 and reject_percent < 100)
);
comment on table stage_standard is 'What each stage takes of hands, how long it must rest afterwards and how often it fails.';
insert into stage_standard values
    ('PRINT',      4, 2,   0,   0.5, 2),
    ('LAMINATE',   3, 3,   0,  12,   2),
    ('SHEET_PREP', 2, 6,   0,   0,   1),
    ('STICK',      2, 5,   0,   0,   3),
    ('MASK',       1, 3,   0,   0,   0),
    ('CUT',        6, 2,   0,   0,   4),
    ('FINISH',     1, 4,   3,   0,   1),
    ('PACK',       2, 5,   0,   0,   0),
    ('HAND_OVER',  5, 1,   0,   0,   0);
