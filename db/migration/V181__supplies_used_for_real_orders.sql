-- Lines of the ledger that name an order which was never kept lose its name, not their cost; from here on there are none.
alter table supply_movement disable trigger supply_ledger_never_rewritten;
update supply_movement m
   set note = btrim(m.note || ' (order ' || m.order_id || ' is not known)'), order_id = null
 where m.order_id is not null and not exists (select from customer_order o where o.id = m.order_id);
alter table supply_movement enable trigger supply_ledger_never_rewritten;

alter table supply_movement add constraint supply_movement_order foreign key (order_id) references customer_order;
