create table print_medium (
    id               bigint generated always as identity primary key,
    name             text not null constraint print_medium_name_given check (btrim(name) <> ''),
    kind             text not null constraint print_medium_kind check (kind in ('SHEET', 'ROLL')),
    width_mm         numeric(10, 3) not null constraint print_medium_width check (width_mm between 50 and 3000),
    height_mm        numeric(10, 3) not null constraint print_medium_height check (height_mm between 50 and 100000),
    margin_mm        numeric(10, 3) not null constraint print_medium_margin check (margin_mm between 0 and 50),
    gap_mm           numeric(10, 3) not null constraint print_medium_gap check (gap_mm between 3 and 100),
    sticker_item_id  bigint constraint print_medium_sticker references supply_item,
    laminate_item_id bigint constraint print_medium_laminate references supply_item,
    usual            boolean not null default false,
    retired          boolean not null default false,
    constraint print_medium_leaves_room check (2 * margin_mm + 20 < least(width_mm, height_mm))
);
create unique index print_medium_name_once on print_medium (lower(name)) where not retired;
create unique index print_medium_usual_once on print_medium ((true)) where usual and not retired;
comment on table print_medium is 'Sticker sheets and rolls that can be printed on. The margin cannot be printed; height of a roll is the longest run.';

insert into print_medium (name, kind, width_mm, height_mm, margin_mm, gap_mm, usual) values
    ('A4', 'SHEET', 210, 297, 3, 4, false),
    ('A3', 'SHEET', 297, 420, 3, 4, true),
    ('13 × 19 in', 'SHEET', 330.2, 482.6, 3, 4, false),
    ('Roll 610 mm', 'ROLL', 610, 5000, 5, 4, false);

create table print_run (
    id               bigint generated always as identity primary key,
    state            text not null constraint print_run_state check (state in ('PROPOSED', 'CONFIRMED', 'PRINTED', 'DISCARDED')),
    medium_id        bigint not null constraint print_run_medium references print_medium,
    kind             text not null constraint print_run_kind check (kind in ('SHEET', 'ROLL')),
    medium_name      text not null,
    width_mm         numeric(10, 3) not null,
    height_mm        numeric(10, 3) not null,
    margin_mm        numeric(10, 3) not null,
    gap_mm           numeric(10, 3) not null,
    sheets           integer not null constraint print_run_sheets check (sheets >= 0),
    fewest_sheets    integer not null,
    length_mm        numeric(12, 3) not null constraint print_run_length check (length_mm >= 0),
    least_length_mm  numeric(12, 3) not null,
    created_at       timestamptz not null,
    created_by       text not null,
    printed_at       timestamptz,
    version          bigint not null default 0,
    constraint print_run_printed_when check ((state = 'PRINTED') = (printed_at is not null)),
    constraint print_run_bound check (fewest_sheets <= sheets)
);
create index print_run_open on print_run (id) where state in ('PROPOSED', 'CONFIRMED');
comment on table print_run is 'Pictures printed together. The medium is copied, so that a run stays what it was.';

create table print_run_item (
    id            bigint generated always as identity primary key,
    run_id        bigint not null constraint print_run_item_run references print_run,
    order_id      bigint not null,
    order_number  text not null,
    copy          integer not null constraint print_run_item_copy check (copy >= 1),
    look          text not null,
    width_mm      numeric(10, 3) not null constraint print_run_item_width check (width_mm > 0),
    height_mm     numeric(10, 3) not null constraint print_run_item_height check (height_mm > 0),
    overhang_mm   numeric(10, 3) not null constraint print_run_item_overhang check (overhang_mm >= 0),
    due_on        date,
    sheet         integer not null constraint print_run_item_sheet check (sheet >= 0),
    x_mm          numeric(12, 3) not null constraint print_run_item_x check (x_mm >= 0),
    y_mm          numeric(12, 3) not null constraint print_run_item_y check (y_mm >= 0),
    turned        boolean not null,
    pinned        boolean not null default false,
    outcome       text not null constraint print_run_item_outcome check
                  (outcome in ('PLANNED', 'PRINTED', 'SPOILED', 'DROPPED', 'MADE_AGAIN')),
    note          text not null default '',
    constraint print_run_item_spoiled_why check (outcome <> 'SPOILED' or btrim(note) <> '')
);
create unique index print_copy_in_one_run on print_run_item (order_id, copy) where outcome in ('PLANNED', 'PRINTED');
create index print_run_item_by_run on print_run_item (run_id);
create index print_run_item_by_order on print_run_item (order_id);
comment on table print_run_item is 'One copy of one order''s picture in a run. A copy is planned or printed once at a time; spoiled, dropped and replaced ones stay as history.';
comment on column print_run_item.look is 'What was approved when the run was made: the picture and its crop.';
comment on column print_run_item.x_mm is 'Corner of the sticker and its label, from the left edge of the sheet; y from its top.';

create table print_run_history (
    id        bigint generated always as identity primary key,
    run_id    bigint not null constraint print_run_history_run references print_run,
    at        timestamptz not null,
    who       text not null,
    text_key  text not null,
    arguments text[] not null
);
create index print_run_history_by_run on print_run_history (run_id, id);
comment on table print_run_history is 'What happened to a run, when, by whom; lines are only ever added.';

create function print_history_is_only_added_to() returns trigger language plpgsql as $$
begin
    raise exception 'history is only added to' using errcode = 'restrict_violation';
end $$;
create trigger print_run_history_is_only_added_to before update or delete on print_run_history
    for each row execute function print_history_is_only_added_to();

create function print_run_moves_forward() returns trigger language plpgsql as $$
begin
    if old.state in ('PRINTED', 'DISCARDED') and new.state <> old.state
       or old.state = 'PROPOSED' and new.state = 'PRINTED' then
        raise exception 'A print run does not go from % to %.', old.state, new.state using errcode = 'check_violation';
    end if;
    return new;
end $$;
create trigger print_run_moves_forward before update on print_run
    for each row execute function print_run_moves_forward();
