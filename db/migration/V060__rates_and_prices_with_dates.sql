create function pricing_never_rewritten() returns trigger language plpgsql as $$
begin
    raise exception 'Rows of % are added, never changed: an old order keeps its costs.', tg_table_name
        using errcode = 'restrict_violation';
end $$;

create table rate (
    id          bigint generated always as identity primary key,
    kind        text not null constraint rate_kind_given check (kind <> ''),
    value       numeric(19, 6) not null constraint rate_not_negative check (value >= 0),
    currency    char(3),
    holds_from  date not null,
    note        text not null default '',
    who         text not null,
    entered_at  timestamptz not null
);
create index rate_by_kind_and_day on rate (kind, holds_from desc, id desc);
create trigger rate_never_rewritten before update or delete on rate
    for each row execute function pricing_never_rewritten();
comment on table rate is 'Figures a price is built from, each from a day on. The latest entry for a day holds. Money carries its currency, other figures none.';

create table price_rule (
    id              bigint generated always as identity primary key,
    holds_from      date not null,
    method          text not null constraint price_rule_method check (method in ('MARGIN', 'MARKUP', 'LIST')),
    margin_percent  numeric(9, 4) not null constraint price_rule_margin check (margin_percent >= 0 and margin_percent < 100),
    markup_percent  numeric(9, 4) not null constraint price_rule_markup check (markup_percent >= 0),
    floor_percent   numeric(9, 4) not null constraint price_rule_floor check (floor_percent < 100),
    rush_percent    numeric(9, 4) not null constraint price_rule_rush check (rush_percent >= 0),
    vat_mode        text not null constraint price_rule_vat check (vat_mode in ('NONE', 'INCLUDED', 'ON_TOP')),
    vat_rounding    text not null constraint price_rule_vat_rounding check (vat_rounding in ('BY_LINE', 'BY_TOTAL')),
    point_step      numeric(19, 4) not null constraint price_rule_step check (point_step > 0),
    point_ending    numeric(19, 4) not null,
    who             text not null,
    entered_at      timestamptz not null,
    constraint price_rule_ending check (point_ending >= 0 and point_ending < point_step)
);
create trigger price_rule_never_rewritten before update or delete on price_rule
    for each row execute function pricing_never_rewritten();
comment on table price_rule is 'How a price is made from a cost, from a day on. The latest entry for a day holds.';

create table price_list (
    id          bigint generated always as identity primary key,
    holds_from  date not null,
    currency    char(3) not null,
    who         text not null,
    entered_at  timestamptz not null
);
comment on table price_list is 'A whole price list, from a day on. The latest entry for a day holds.';

create table price_list_line (
    list_id     bigint not null constraint price_list_line_list references price_list,
    longer_mm   numeric(10, 3) not null,
    shorter_mm  numeric(10, 3) not null,
    pieces      integer not null constraint price_list_line_pieces check (pieces > 0),
    price       numeric(19, 4) not null constraint price_list_line_price check (price >= 0),
    constraint price_list_line_once primary key (list_id, longer_mm, shorter_mm, pieces),
    constraint price_list_line_sides check (shorter_mm > 0 and longer_mm >= shorter_mm)
);
create trigger price_list_never_rewritten before update or delete on price_list
    for each row execute function pricing_never_rewritten();
create trigger price_list_line_never_rewritten before update or delete on price_list_line
    for each row execute function pricing_never_rewritten();
comment on table price_list_line is 'One line of a price list: the price said for one puzzle up to a size and a number of pieces.';
