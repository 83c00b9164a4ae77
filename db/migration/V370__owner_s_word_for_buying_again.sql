alter table supply_item
    add column own_point numeric(19, 6) constraint supply_own_point_not_negative check (own_point >= 0);
comment on column supply_item.own_point is 'Stock, in use units, at which the owner wants to buy again; absent: by the use so far.';
