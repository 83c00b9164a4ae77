-- Until now prices used the figures among the rates, and those at the machine changed nothing. Whatever a workshop has
-- entered among the rates is what its prices were made of, so it becomes the machine's; where it entered nothing there,
-- the machine's own figures count from now on, and a machine without a price goes on with the starting values.
create temporary table laser_rate on commit drop as
select distinct on (kind) kind, value from rate
 where holds_from <= current_date
   and kind in ('MACHINE_PRICE', 'MACHINE_RESIDUAL', 'MACHINE_LIFE_HOURS', 'MACHINE_KILOWATTS', 'MACHINE_UPKEEP_YEAR',
                'MACHINE_HOURS_YEAR', 'LENS_PRICE', 'LENS_LIFE_HOURS', 'FILTER_PRICE', 'FILTER_LIFE_HOURS')
 order by kind, holds_from desc, id desc;

create temporary table laser_held on commit drop as
select s.kind, coalesce(r.value, s.value) as value
  from (values ('MACHINE_PRICE', 900.0), ('MACHINE_RESIDUAL', 100), ('MACHINE_LIFE_HOURS', 2000), ('MACHINE_KILOWATTS', 0.18),
               ('MACHINE_UPKEEP_YEAR', 60), ('MACHINE_HOURS_YEAR', 600), ('LENS_PRICE', 25), ('LENS_LIFE_HOURS', 300),
               ('FILTER_PRICE', 30), ('FILTER_LIFE_HOURS', 200)) as s (kind, value)
  left join laser_rate r on r.kind = s.kind
 where exists (select from laser_rate);

delete from cutting_wear_part
 where machine_id in (select id from cutting_machine where standard) and exists (select from laser_held);
insert into cutting_wear_part (machine_id, name, price, life_hours)
select m.id, w.name, p.value, l.value::double precision
  from cutting_machine m
  cross join (values ('Lens', 'LENS_PRICE', 'LENS_LIFE_HOURS'), ('Filter', 'FILTER_PRICE', 'FILTER_LIFE_HOURS'))
       as w (name, price, life)
  join laser_held p on p.kind = w.price join laser_held l on l.kind = w.life
 where m.standard;
update cutting_machine m
   set price = (select value from laser_held where kind = 'MACHINE_PRICE'),
       residual = (select least(value, (select value from laser_held where kind = 'MACHINE_PRICE')) from laser_held
                    where kind = 'MACHINE_RESIDUAL'),
       life_hours = (select value from laser_held where kind = 'MACHINE_LIFE_HOURS'),
       power_kw = (select value from laser_held where kind = 'MACHINE_KILOWATTS'),
       yearly_upkeep = (select value from laser_held where kind = 'MACHINE_UPKEEP_YEAR'),
       yearly_hours = (select value from laser_held where kind = 'MACHINE_HOURS_YEAR'),
       version = version + 1
 where m.standard and exists (select from laser_held);
