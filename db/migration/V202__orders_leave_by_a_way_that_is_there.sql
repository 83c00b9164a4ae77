-- A way could not be deleted while an order left by it, but only the program saw to that.
update customer_order o set delivery_way = null
    where delivery_way is not null and not exists (select from delivery_way w where w.id = o.delivery_way);
alter table customer_order add constraint customer_order_way foreign key (delivery_way) references delivery_way;
create index customer_order_by_way on customer_order (delivery_way) where delivery_way is not null;
