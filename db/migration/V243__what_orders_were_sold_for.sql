create view order_sold as
select o.id as order_id, o.currency,
       case when p.papers > 0 then p.net when o.state = 'CANCELLED' then 0 else o.price_net end as net
  from customer_order o
  cross join lateral (select count(*) as papers,
                             coalesce(sum(case series when 'INVOICE' then net else -net end), 0) as net
                        from invoice where order_id = o.id) p;
comment on view order_sold is 'What each order was sold for, without tax: its invoices less its credit notes, before any invoice the agreed price. Read by reports.';
