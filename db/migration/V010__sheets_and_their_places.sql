create table board_material (
    id            text primary key constraint board_material_id_plain check (id ~ '^[a-z0-9-]+$'),
    name          text not null constraint board_material_name_given check (name <> ''),
    density_kg_m3 double precision not null constraint board_material_density check (density_kg_m3 between 50 and 1500),
    source        text not null default '',
    used          boolean not null default true
);
comment on table board_material is 'Kinds of board with their density at 12 % moisture, for weights and for choosing.';
insert into board_material (id, name, density_kg_m3, source) values
    ('birch-ply',    'Birch ply',         694.4, 'yellow birch 0.62 × 1.12: Wood Handbook FPL-GTR-282, table 5-3 and chapter 4'),
    ('poplar-ply',   'Poplar ply',        470.4, 'yellow-poplar 0.42 × 1.12: same'),
    ('basswood-ply', 'Basswood ply',      414.4, 'basswood 0.37 × 1.12: same'),
    ('aspen-ply',    'Aspen ply',         425.6, 'quaking aspen 0.38 × 1.12: same'),
    ('softwood-ply', 'Softwood ply',      560.0, 'common practice'),
    ('mdf',          'MDF',               750.0, 'common practice');

create table board_offer (
    id            bigint generated always as identity primary key,
    name          text not null constraint board_offer_name_given check (name <> ''),
    material      text not null constraint board_offer_material references board_material,
    grade         text not null constraint board_offer_grade check (grade in ('CRAFT', 'GENERAL', 'CONSTRUCTION')),
    thickness_mm  double precision not null constraint board_offer_thickness check (thickness_mm between 0.3 and 50),
    width_mm      double precision not null constraint board_offer_width check (width_mm between 50 and 4000),
    height_mm     double precision not null constraint board_offer_height check (height_mm between 50 and 4000),
    grain         text not null constraint board_offer_grain check (grain in ('NONE', 'ALONG_WIDTH', 'ALONG_HEIGHT')),
    price         numeric(19, 4) not null constraint board_offer_price check (price >= 0),
    currency      char(3) not null,
    offered       boolean not null default true
);
comment on table board_offer is 'New boards that can be bought: size, kind and price, used when no sheet in the rack gives a blank.';

create table sheet_rule (
    id               smallint primary key default 1 constraint sheet_rule_one_row check (id = 1),
    largest_width_mm double precision not null constraint sheet_rule_width check (largest_width_mm between 100 and 10000),
    largest_height_mm double precision not null constraint sheet_rule_height check (largest_height_mm between 100 and 10000),
    kerf_mm          double precision not null constraint sheet_rule_kerf check (kerf_mm between 0 and 10),
    most_bow_mm      double precision not null constraint sheet_rule_bow check (most_bow_mm between 0 and 50),
    thickness_slack_mm double precision not null constraint sheet_rule_slack check (thickness_slack_mm between 0 and 2),
    offcut_cost      text not null constraint sheet_rule_cost check (offcut_cost in ('FULL', 'SHARE', 'NOTHING')),
    share_percent    numeric(5, 2) not null constraint sheet_rule_share check (share_percent between 0 and 100)
);
comment on table sheet_rule is 'How the rack counts: largest board taken in, width of a cut, bow allowed, what an offcut carries in cost. One row.';
insert into sheet_rule values (1, 2600, 1300, 0.2, 1, 0.4, 'FULL', 50);

create table standard_blank (
    width_mm  double precision not null,
    height_mm double precision not null,
    constraint standard_blank_once primary key (width_mm, height_mm),
    constraint standard_blank_sides check (width_mm between 20 and 4000 and height_mm between 20 and 4000)
);
comment on table standard_blank is 'Blanks of the puzzles commonly made: the largest of them that a piece still gives sets its worth.';
insert into standard_blank values (170, 127), (232, 170), (222, 222), (319, 232), (375, 272), (442, 319), (522, 372),
    (616, 442), (722, 522), (863, 616);

create table sheet (
    id            bigint generated always as identity primary key,
    outline       text not null constraint sheet_outline_given check (outline <> ''),
    width_mm      double precision not null constraint sheet_width check (width_mm > 0),
    height_mm     double precision not null constraint sheet_height check (height_mm > 0),
    area_mm2      double precision not null constraint sheet_area check (area_mm2 > 0),
    material      text not null constraint sheet_material references board_material,
    grade         text not null constraint sheet_grade check (grade in ('CRAFT', 'GENERAL', 'CONSTRUCTION')),
    nominal_mm    double precision not null constraint sheet_nominal check (nominal_mm between 0.3 and 50),
    measured_mm   double precision constraint sheet_measured check (measured_mm between 0.3 and 50),
    bow_mm        double precision not null default 0 constraint sheet_bow check (bow_mm between 0 and 100),
    past          text not null constraint sheet_past check (past in ('CLEAN', 'PAINTED', 'WET_GLUE', 'UNKNOWN')),
    grain         text not null constraint sheet_grain check (grain in ('NONE', 'ALONG_WIDTH', 'ALONG_HEIGHT')),
    place         text not null default '',
    note          text not null default '',
    cost          numeric(19, 6) not null constraint sheet_cost check (cost >= 0),
    currency      char(3) not null,
    state         text not null constraint sheet_state check (state in ('FREE', 'RESERVED', 'USED', 'SCRAPPED', 'WITHDRAWN')),
    from_cut      bigint,
    entered_at    timestamptz not null,
    state_since   timestamptz not null,
    version       bigint not null default 0
);
create index sheet_by_state on sheet (state, id desc);
create index sheet_by_place on sheet (place, id);
comment on table sheet is 'Boards and offcuts: shape in mm, condition, place, cost carried, state. Never deleted.';
comment on column sheet.outline is 'outer ring as x,y x,y … then each bad area after a semicolon';

create table sheet_reservation (
    id          bigint generated always as identity primary key,
    sheet_id    bigint not null constraint sheet_reservation_sheet references sheet,
    order_id    bigint not null,
    x_mm        double precision not null,
    y_mm        double precision not null,
    degrees     double precision not null constraint sheet_reservation_angle check (degrees >= 0 and degrees < 180),
    width_mm    double precision not null constraint sheet_reservation_width check (width_mm > 0),
    height_mm   double precision not null constraint sheet_reservation_height check (height_mm > 0),
    who         text not null,
    reserved_at timestamptz not null,
    ended_at    timestamptz,
    ended_how   text constraint sheet_reservation_end check (ended_how in ('RELEASED', 'CUT')),
    constraint sheet_reservation_ended_somehow check ((ended_at is null) = (ended_how is null))
);
create unique index sheet_reserved_once on sheet_reservation (sheet_id) where ended_at is null;
create index sheet_reservation_by_order on sheet_reservation (order_id) where ended_at is null;
comment on table sheet_reservation is 'Who holds a sheet for which order and where the blank lies on it; at most one living reservation for a sheet.';

create table sheet_cut (
    id            bigint generated always as identity primary key,
    sheet_id      bigint not null constraint sheet_cut_sheet references sheet,
    reservation_id bigint constraint sheet_cut_reservation references sheet_reservation,
    order_id      bigint,
    x_mm          double precision not null,
    y_mm          double precision not null,
    degrees       double precision not null,
    width_mm      double precision not null,
    height_mm     double precision not null,
    offcut_cost   text not null constraint sheet_cut_rule check (offcut_cost in ('FULL', 'SHARE', 'NOTHING')),
    cost_in       numeric(19, 6) not null,
    cost_blank    numeric(19, 6) not null constraint sheet_cut_blank check (cost_blank >= 0),
    cost_offcuts  numeric(19, 6) not null constraint sheet_cut_offcuts check (cost_offcuts >= 0),
    cost_scrapped numeric(19, 6) not null constraint sheet_cut_scrapped check (cost_scrapped >= 0),
    currency      char(3) not null,
    who           text not null,
    cut_at        timestamptz not null,
    undone_at     timestamptz,
    constraint sheet_cut_value_kept check (cost_in = cost_blank + cost_offcuts + cost_scrapped)
);
create unique index sheet_cut_once on sheet_cut (sheet_id) where undone_at is null;
create index sheet_cut_by_order on sheet_cut (order_id);
alter table sheet add constraint sheet_from_cut foreign key (from_cut) references sheet_cut;
create index sheet_by_cut on sheet (from_cut) where from_cut is not null;
comment on table sheet_cut is 'A blank cut from a sheet: the value that went in equals blank, offcuts and scrap together.';

create table sheet_history (
    id        bigint generated always as identity primary key,
    sheet_id  bigint not null constraint sheet_history_sheet references sheet,
    at        timestamptz not null,
    who       text not null,
    what      text not null,
    detail    text not null default ''
);
create index sheet_history_by_sheet on sheet_history (sheet_id, id);
comment on table sheet_history is 'What happened to a sheet, when and by whom; only added to.';
create function sheet_history_is_kept() returns trigger language plpgsql as $$
begin
    raise exception 'The history of a sheet is only added to.' using errcode = 'restrict_violation';
end $$;
create trigger sheet_history_never_rewritten before update or delete on sheet_history
    for each row execute function sheet_history_is_kept();

create table sheet_photo (
    sheet_id  bigint primary key constraint sheet_photo_sheet references sheet,
    content   bytea not null constraint sheet_photo_size check (octet_length(content) <= 8000000),
    added_at  timestamptz not null
);
comment on table sheet_photo is 'One photo of a sheet, as JPEG.';

create table stock_take (
    id          bigint generated always as identity primary key,
    who         text not null,
    started_at  timestamptz not null,
    finished_at timestamptz
);
create unique index stock_take_one_open on stock_take ((true)) where finished_at is null;
comment on table stock_take is 'A walk along the rack; one at a time.';
create table stock_take_seen (
    stock_take_id bigint not null constraint stock_take_seen_take references stock_take,
    sheet_id      bigint not null constraint stock_take_seen_sheet references sheet,
    seen_at       timestamptz not null,
    who           text not null,
    constraint stock_take_seen_once primary key (stock_take_id, sheet_id)
);
comment on table stock_take_seen is 'Sheets found on a walk along the rack.';
