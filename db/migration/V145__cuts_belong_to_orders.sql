alter table cutting_job add constraint cutting_job_order foreign key (order_id) references customer_order;
create index cutting_job_of_order on cutting_job (order_id) where order_id is not null;
