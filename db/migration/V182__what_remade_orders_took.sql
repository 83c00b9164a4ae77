-- Work on attempts that failed is what went wrong cost, with the minutes told there, by the clock or by the standard.
-- The clock of a stage is that of the attempt that made the good puzzles; both together are all that was worked.
create or replace view stage_took as
select d.order_id, d.stage, d.minutes::double precision as minutes, d.attempt::bigint as times
  from stage_done d left join stage_undone u on u.done_id = d.id
 where u.done_id is null and d.minutes is not null
   and not exists (select from stage_done later left join stage_undone lu on lu.done_id = later.id
                    where later.order_id = d.order_id and later.stage = d.stage and later.attempt > d.attempt and lu.done_id is null);
comment on view stage_took is 'Minutes by the clock for each stage of an order, of the attempt that counts: the last one, where it was clocked.';

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
           and w.again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK')) as print_lost_at
  from customer_order o join customer c on c.id = o.customer_id;
comment on view order_took is 'For each order what it was reckoned to take and what it took, with what was lost. What was used up until print_lost_at is in material_lost. Read by reports.';
