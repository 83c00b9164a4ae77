-- A mistyped payment stays, and so does the line that undoes it.
alter table order_payment drop constraint order_payment_kind;
alter table order_payment add constraint order_payment_kind
    check (kind in ('DEPOSIT', 'PAYMENT', 'REFUND', 'RECEIPT_TAKEN_BACK', 'REFUND_TAKEN_BACK'));
alter table order_payment add column takes_back bigint constraint order_payment_taken_back references order_payment;
alter table order_payment add constraint order_payment_takes_back
    check ((takes_back is not null) = (kind in ('RECEIPT_TAKEN_BACK', 'REFUND_TAKEN_BACK')));
create unique index order_payment_taken_back_once on order_payment (takes_back);

create function payment_taken_back_as_it_was() returns trigger language plpgsql as $$
begin
    if new.takes_back is not null and not exists (
            select from order_payment p where p.id = new.takes_back and p.order_id = new.order_id
               and (p.amount, p.currency, p.way) = (new.amount, new.currency, new.way)
               and new.kind = case p.kind when 'REFUND' then 'REFUND_TAKEN_BACK'
                                          when 'DEPOSIT' then 'RECEIPT_TAKEN_BACK'
                                          when 'PAYMENT' then 'RECEIPT_TAKEN_BACK' end) then
        raise exception 'Line % does not undo line % of its order.', new.id, new.takes_back using errcode = 'check_violation';
    end if;
    return new;
end $$;
create trigger payment_taken_back_as_it_was before insert on order_payment
    for each row execute function payment_taken_back_as_it_was();

create or replace view order_money as
select o.id as order_id, o.number, c.name as customer, o.currency,
       case when p.papers > 0 then p.invoiced else case when o.state = 'CANCELLED' then 0 else o.price_gross end end as due,
       coalesce((select sum(case when kind in ('REFUND', 'RECEIPT_TAKEN_BACK') then -amount else amount end)
                   from order_payment where order_id = o.id), 0) as received,
       p.due_on
  from customer_order o
  join customer c on c.id = o.customer_id
  cross join lateral (select count(*) as papers,
                             coalesce(sum(case series when 'INVOICE' then gross else -gross end), 0) as invoiced,
                             max(due_on) filter (where series = 'INVOICE') as due_on
                        from invoice where order_id = o.id) p
 where o.state <> 'QUOTE';
comment on table order_payment is 'Money taken for an order and given back; lines are added, a refund is a line of its own, and a mistyped line is undone by another.';
