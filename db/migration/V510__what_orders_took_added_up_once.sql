-- Asked for a year of orders at once, cuts, mishaps, complaints and papers were looked up order by order, six times each: Figures
-- waited longest for it. Added up once, and for a single order only of that one, since the condition goes into each of the sums.
create or replace view order_sold as
select o.id as order_id, o.currency,
       case when p.order_id is not null then p.net when o.state = 'CANCELLED' then 0 else o.price_net end as net
  from customer_order o
  left join (select order_id, sum(case series when 'INVOICE' then net else -net end) as net
               from invoice group by order_id) p on p.order_id = o.id;

create or replace view order_took as
select o.id as order_id, o.number, c.name as customer, o.state, o.confirmed_at,
       coalesce(f.left_at, o.handed_over_at) as handed_over_at, o.quantity,
       o.width_mm, o.height_mm, coalesce(o.pieces, o.piece_columns * o.piece_rows) as pieces, o.currency, o.price_net,
       o.laser_minutes as laser_estimate, o.kept_price,
       j.laser_minutes,
       coalesce(w.material_lost, 0) + coalesce(b.postage, 0) as material_lost,
       coalesce(w.mishaps, 0) as mishaps,
       coalesce(w.minutes_lost, 0)::double precision as minutes_lost,
       w.print_lost_at,
       o.version
  from customer_order o join customer c on c.id = o.customer_id
  left join order_first_left f on f.order_id = o.id
  left join (select order_id, sum(extract(epoch from ended_at - started_at) / 60)::double precision as laser_minutes
               from cutting_job
              where started_at is not null and ended_at is not null and (broken_off or trial_id is not null)
              group by order_id) j on j.order_id = o.id
  left join (select w.order_id, count(*) as mishaps, sum(w.minutes_lost) as minutes_lost,
                    sum(w.material_lost) filter (where w.currency = o.currency) as material_lost,
                    max(w.happened_at) filter (where w.again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK')) as print_lost_at
               from went_wrong w join customer_order o on o.id = w.order_id
              group by w.order_id) w on w.order_id = o.id
  left join (select b.order_id, sum(b.postage) as postage
               from complaint b join customer_order o on o.id = b.order_id and o.currency = b.currency
              where b.postage_by = 'WORKSHOP'
              group by b.order_id) b on b.order_id = o.id;
