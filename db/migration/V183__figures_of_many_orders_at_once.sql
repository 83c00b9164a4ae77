create or replace view order_took as
select o.id as order_id, o.number, c.name as customer, o.state, o.confirmed_at, o.handed_over_at, o.quantity,
       o.width_mm, o.height_mm, o.piece_columns * o.piece_rows as pieces, o.currency, o.price_net,
       o.laser_minutes as laser_estimate, o.kept_price,
       (select sum(extract(epoch from ended_at - started_at) / 60)::double precision from cutting_job j
         where j.order_id = o.id and j.started_at is not null and j.ended_at is not null) as laser_minutes,
       coalesce((select sum(w.material_lost) from went_wrong w where w.order_id = o.id and w.currency = o.currency), 0) as material_lost,
       (select count(*) from went_wrong w where w.order_id = o.id) as mishaps,
       coalesce((select sum(w.minutes_lost) from went_wrong w where w.order_id = o.id), 0)::double precision as minutes_lost,
       (select max(w.happened_at) from went_wrong w where w.order_id = o.id
           and w.again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK')) as print_lost_at,
       o.version
  from customer_order o join customer c on c.id = o.customer_id;

create view order_materials as
select m.order_id, i.kind, i.currency,
       sum(case when m.at <= (select max(w.happened_at) from went_wrong w where w.order_id = m.order_id
                                  and w.again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK'))
                then 0 else -m.quantity * m.unit_cost end) as cost
  from supply_movement m join supply_item i on i.id = m.item_id
 where m.order_id is not null and m.kind in ('USED', 'RETURNED')
 group by m.order_id, i.kind, i.currency;
comment on view order_materials is 'What supplies for the puzzles made well have cost, by order and kind; what was used up before a print was lost counts among the losses, so it stands here as nothing. Read by reports.';

create index customer_order_handed_over on customer_order (handed_over_at) where handed_over_at is not null;
