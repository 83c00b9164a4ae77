create view order_ref as select id, number from customer_order;
comment on view order_ref is 'The number by which people know an order. Every room may read it; the rest of an order belongs to the room orders.';

-- A cut or a print of an order that is not there cannot be; earlier programs could not write one, but nothing forbade it.
update sheet_cut c set order_id = null where order_id is not null and not exists (select from customer_order o where o.id = c.order_id);
alter table sheet_cut add constraint sheet_cut_order foreign key (order_id) references customer_order;
alter table print_run_item add constraint print_run_item_order foreign key (order_id) references customer_order;
