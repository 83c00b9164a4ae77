create or replace view order_took as
select o.id as order_id, o.number, c.name as customer, o.state, o.confirmed_at,
       coalesce(f.left_at, o.handed_over_at) as handed_over_at, o.quantity,
       o.width_mm, o.height_mm, coalesce(o.pieces, o.piece_columns * o.piece_rows) as pieces, o.currency, o.price_net,
       o.laser_minutes as laser_estimate, o.kept_price,
       (select sum(extract(epoch from ended_at - started_at) / 60)::double precision from cutting_job j
         where j.order_id = o.id and j.started_at is not null and j.ended_at is not null
           and (j.broken_off or j.trial_id is not null)) as laser_minutes,
       coalesce((select sum(w.material_lost) from went_wrong w where w.order_id = o.id and w.currency = o.currency), 0)
         + coalesce((select sum(b.postage) from complaint b where b.order_id = o.id and b.currency = o.currency
                        and b.postage_by = 'WORKSHOP'), 0) as material_lost,
       (select count(*) from went_wrong w where w.order_id = o.id) as mishaps,
       coalesce((select sum(w.minutes_lost) from went_wrong w where w.order_id = o.id), 0)::double precision as minutes_lost,
       (select max(w.happened_at) from went_wrong w where w.order_id = o.id
           and w.again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK')) as print_lost_at,
       o.version
  from customer_order o join customer c on c.id = o.customer_id
  left join order_first_left f on f.order_id = o.id;
comment on view order_took is 'For each order what it was reckoned to take and what it took, with what was lost. One that is made again after a return keeps the moment when it was first handed over. What was used up until print_lost_at is in material_lost. Read by reports.';

create view order_piece_free as
select p.order_id, p.of_order, o.number
  from piece_again p join customer_order o on o.id = p.order_id join order_sold s on s.order_id = p.order_id
 where o.state in ('CONFIRMED', 'HANDED_OVER', 'CLOSED') and s.net = 0;
comment on view order_piece_free is 'Orders of one piece that the customer pays nothing for: what they cost counts with the order that the piece belongs to. Read by reports.';
