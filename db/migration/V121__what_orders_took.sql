create view order_took as
select o.id as order_id, o.number, c.name as customer, o.state, o.confirmed_at, o.handed_over_at, o.quantity,
       o.width_mm, o.height_mm, o.piece_columns * o.piece_rows as pieces, o.currency, o.price_net,
       o.laser_minutes as laser_estimate, o.kept_price,
       (select sum(extract(epoch from ended_at - started_at) / 60)::double precision from cutting_job j
         where j.order_id = o.id and j.started_at is not null and j.ended_at is not null) as laser_minutes,
       coalesce((select sum(w.material_lost) from went_wrong w where w.order_id = o.id and w.currency = o.currency), 0) as material_lost,
       (select count(*) from went_wrong w where w.order_id = o.id) as mishaps
  from customer_order o join customer c on c.id = o.customer_id;
comment on view order_took is 'For each order what it was reckoned to take and what it took. Read by reports.';

create view stage_took as
select d.order_id, d.stage, sum(d.minutes)::double precision as minutes, count(*) as times
  from stage_done d left join stage_undone u on u.done_id = d.id
 where u.done_id is null
 group by d.order_id, d.stage
having bool_and(d.minutes is not null);
comment on view stage_took is 'Minutes by the clock for each stage of an order, work made again included; only where every time was clocked.';
