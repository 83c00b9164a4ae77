create view asked_blank as
select o.confirmed_at, b.width_mm, b.height_mm, o.board_material as material, o.board_grade as grade,
       o.board_thickness_mm as thickness_mm
from order_blank b join customer_order o on o.id = b.order_id
where o.confirmed_at is not null;
comment on view asked_blank is 'Blanks of confirmed orders with the kind of board they are cut from: what the workshop is asked for.';

create view wood_moved as
select s.entered_at as at, 'BOUGHT' as what, s.area_mm2, s.cost, s.currency
from sheet s where s.from_cut is null and s.state <> 'WITHDRAWN'
union all
select c.cut_at, case when c.order_id is null then 'THROWN' else 'USED' end, c.width_mm * c.height_mm, c.cost_blank, c.currency
from sheet_cut c where c.undone_at is null
union all
select c.cut_at, 'KEPT', s.area_mm2, s.cost, s.currency
from sheet s join sheet_cut c on c.id = s.from_cut where s.state <> 'WITHDRAWN' and c.undone_at is null
union all
select c.cut_at, 'THROWN',
       greatest(0, p.area_mm2 - c.width_mm * c.height_mm
           - (select coalesce(sum(s.area_mm2), 0) from sheet s where s.from_cut = c.id and s.state <> 'WITHDRAWN')),
       c.cost_scrapped, c.currency
from sheet_cut c join sheet p on p.id = c.sheet_id where c.undone_at is null
union all
select s.state_since, 'THROWN', s.area_mm2, s.cost, s.currency
from sheet s where s.state = 'SCRAPPED';
comment on view wood_moved is 'Wood that came in, went into blanks, was kept as offcuts or thrown away: area in mm² and the value it carried.';

create table asked_correction (
    width_mm  double precision not null,
    height_mm double precision not null,
    per_week  double precision not null constraint asked_correction_rate check (per_week between 0 and 1000),
    who       text not null,
    at        timestamptz not null,
    constraint asked_correction_once primary key (width_mm, height_mm),
    constraint asked_correction_sides check (width_mm >= height_mm and height_mm > 0)
);
comment on table asked_correction is 'How often a size of blank is asked for in a week, where the owner knows better than the orders so far.';

create table wood_rule (
    id             smallint primary key default 1 constraint wood_rule_one_row check (id = 1),
    most_pieces    integer not null constraint wood_rule_room check (most_pieces between 1 and 100000),
    weeks_ahead    integer not null constraint wood_rule_ahead check (weeks_ahead between 1 and 26),
    delivery_weeks integer not null constraint wood_rule_delivery check (delivery_weeks between 1 and 26),
    service_percent numeric(5, 2) not null constraint wood_rule_service check (service_percent between 50 and 99)
);
comment on table wood_rule is 'How the owner wants wood to be decided: room in the rack, weeks looked ahead, weeks until boards come, risk allowed. One row.';
insert into wood_rule values (1, 200, 6, 2, 90);
