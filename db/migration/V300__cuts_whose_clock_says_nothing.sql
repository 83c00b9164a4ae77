-- A cut that ended whole without a trial ran ten times faster than it can: it was recorded on somebody's word, and its
-- time is neither evidence nor cost. What a broken-off cut took stays.
create or replace view order_took as
select o.id as order_id, o.number, c.name as customer, o.state, o.confirmed_at, o.handed_over_at, o.quantity,
       o.width_mm, o.height_mm, coalesce(o.pieces, o.piece_columns * o.piece_rows) as pieces, o.currency, o.price_net,
       o.laser_minutes as laser_estimate, o.kept_price,
       (select sum(extract(epoch from ended_at - started_at) / 60)::double precision from cutting_job j
         where j.order_id = o.id and j.started_at is not null and j.ended_at is not null
           and (j.broken_off or j.trial_id is not null)) as laser_minutes,
       coalesce((select sum(w.material_lost) from went_wrong w where w.order_id = o.id and w.currency = o.currency), 0) as material_lost,
       (select count(*) from went_wrong w where w.order_id = o.id) as mishaps,
       coalesce((select sum(w.minutes_lost) from went_wrong w where w.order_id = o.id), 0)::double precision as minutes_lost,
       (select max(w.happened_at) from went_wrong w where w.order_id = o.id
           and w.again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK')) as print_lost_at,
       o.version
  from customer_order o join customer c on c.id = o.customer_id;
comment on column cutting_job.trial_id is
    'The trial a cut became. None of a whole cut whose clock cannot be true: it is neither evidence nor cost.';
