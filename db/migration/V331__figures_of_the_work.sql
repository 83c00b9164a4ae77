create view figure_delivery as
select o.id as order_id, o.number, o.customer_id, c.name as customer, o.confirmed_at, o.promised_on, o.handed_over_at,
       o.quantity, s.net as sold, o.currency
  from customer_order o join customer c on c.id = o.customer_id join order_sold s on s.order_id = o.id
 where o.handed_over_at is not null and o.state in ('HANDED_OVER', 'CLOSED');
comment on view figure_delivery is 'Orders that customers have: promised and handed over, and what they were sold for. Read by reports.';

create view figure_stage as
select d.order_id, d.stage, d.done_at, d.minutes,
       coalesce(lag(d.done_at) over (partition by d.order_id order by d.done_at, d.id), o.confirmed_at) as since
  from stage_done d join customer_order o on o.id = d.order_id left join stage_undone u on u.done_id = d.id
 where u.done_id is null;
comment on view figure_stage is 'Each stage of each order that was done and not taken back, and since when it could have been begun: the stage before it, for the first the order''s confirmation. Read by reports.';

create view figure_reject as
select w.id, w.order_id, w.noticed_at, w.again_from, w.what, w.minutes_lost, w.laser_minutes_lost, w.material_lost,
       w.currency, w.happened_at
  from went_wrong w;
comment on view figure_reject is 'What failed, at which stage and what it cost. Read by reports.';

create view figure_cut as
select k.id as cut_id, k.order_id, k.cut_at, s.from_cut is not null as from_offcut,
       k.width_mm * k.height_mm as blank_mm2, k.cost_blank, k.cost_scrapped, k.currency,
       greatest(0, s.area_mm2 - k.width_mm * k.height_mm
           - coalesce((select sum(r.area_mm2) from sheet r where r.from_cut = k.id), 0)) as lost_mm2
  from sheet_cut k join sheet s on s.id = k.sheet_id
 where k.undone_at is null;
comment on view figure_cut is 'Each cut that stands: whether from an offcut, the blank, and what neither went into the blank nor back into the rack. Read by reports.';

create view figure_sheet as
select s.id, s.area_mm2, s.cost, s.currency, s.state, s.entered_at, s.state_since, s.from_cut is not null as offcut
  from sheet s;
comment on view figure_sheet is 'Boards and offcuts with their worth, from when and until when they lay in the rack. Read by reports.';

create view figure_supply as
select m.item_id, m.number, m.at, m.stock_after * m.average_after as worth, i.currency
  from supply_movement m join supply_item i on i.id = m.item_id;
comment on view figure_supply is 'What each supply was worth after each movement. Read by reports.';

create index went_wrong_by_time on went_wrong (happened_at);
create index sheet_cut_by_time on sheet_cut (cut_at) where undone_at is null;
create index sheet_bought on sheet (entered_at) where from_cut is null;
