-- a usual cut file, for no place of its own, is put on record as well: with its order, with its cut where one is prepared,
-- with a setting where there is a machine
alter table placing_given add column order_id bigint constraint placing_given_order references customer_order;
alter table placing_given disable trigger placing_given_only_added;
update placing_given g set order_id = (select j.order_id from cutting_job j where j.id = g.job_id);
alter table placing_given enable trigger placing_given_only_added;
alter table placing_given alter column job_id drop not null;
alter table placing_given alter column position_id drop not null;
alter table placing_given alter column speed_mm_s drop not null;
alter table placing_given alter column power_percent drop not null;
alter table placing_given alter column passes drop not null;
alter table placing_given alter column air_assist drop not null;
alter table placing_given add constraint placing_given_of_what
    check (position_id is not null and job_id is not null or position_id is null and order_id is not null);
alter table placing_given add constraint placing_given_setting
    check ((position_id is null or speed_mm_s is not null)
        and num_nulls(speed_mm_s, power_percent, passes, air_assist) in (0, 4));
create index placing_given_of_order on placing_given (order_id, id);
comment on table placing_given is
    'Every cut file that was given out, for a position or as usual for an order, its digest and the setting in it. Rows are only added.';
