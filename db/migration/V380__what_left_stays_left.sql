create view order_first_left as
select d.order_id, min(d.done_at) as left_at
  from stage_done d left join stage_undone u on u.done_id = d.id
 where d.stage = 'HAND_OVER' and u.done_id is null
 group by d.order_id;
comment on view order_first_left is 'When each order first left the house, by a tick that was not taken back. An order that is made again after a return keeps this moment, whatever its row says. Read by reports.';

create or replace view figure_delivery as
select o.id as order_id, o.number, o.customer_id, c.name as customer, o.confirmed_at, o.promised_on,
       coalesce(f.left_at, o.handed_over_at) as handed_over_at, o.quantity, s.net as sold, o.currency
  from customer_order o join customer c on c.id = o.customer_id join order_sold s on s.order_id = o.id
  left join order_first_left f on f.order_id = o.id
 where coalesce(f.left_at, o.handed_over_at) is not null and o.state in ('CONFIRMED', 'HANDED_OVER', 'CLOSED');
comment on view figure_delivery is 'Orders that left the house: promised and first handed over, and what they were sold for. One that is made again stays in the week in which it was first handed over. Read by reports.';

create or replace view figure_stage as
select s.order_id, s.stage, s.done_at, s.minutes,
       case when s.stage_before = 'HAND_OVER'
            then (select max(w.happened_at) from went_wrong w
                   where w.order_id = s.order_id and w.happened_at >= s.done_before and w.happened_at <= s.done_at)
            else coalesce(s.done_before, s.confirmed_at) end as since
  from (select d.id, d.order_id, d.stage, d.done_at, d.minutes, o.confirmed_at,
               lag(d.stage) over (partition by d.order_id order by d.done_at, d.id) as stage_before,
               lag(d.done_at) over (partition by d.order_id order by d.done_at, d.id) as done_before
          from stage_done d join customer_order o on o.id = d.order_id left join stage_undone u on u.done_id = d.id
         where u.done_id is null) s;
comment on view figure_stage is 'Each stage of each order that was done and not taken back, and since when it could have been begun: the stage before it, for the first the order''s confirmation, for the first after a hand-over the moment when it was decided to make the order again. Read by reports.';

create or replace view order_left as
select o.id as order_id, o.board_material, o.board_thickness_mm,
       coalesce(f.left_at, o.handed_over_at) as handed_over_at
  from customer_order o left join order_first_left f on f.order_id = o.id
 where coalesce(f.left_at, o.handed_over_at) is not null;
