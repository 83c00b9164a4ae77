create table paper_settings (
    id            smallint primary key default 1 constraint paper_settings_one_row check (id = 1),
    tax_number    text not null default '',
    bank          text not null default '',
    quote_terms   text not null default '',
    invoice_terms text not null default '',
    due_days      integer not null constraint paper_due_days check (due_days between 0 and 365),
    logo          bytea
);
comment on table paper_settings is 'What stands on quotes and invoices beside the workshop''s name and address: one row.';
insert into paper_settings (due_days) values (14);

create table invoice_counter (
    series  text not null constraint invoice_counter_series check (series in ('INVOICE', 'CREDIT_NOTE')),
    year    integer not null,
    last    integer not null constraint invoice_counter_positive check (last > 0),
    constraint invoice_counter_key primary key (series, year)
);
comment on table invoice_counter is 'The last number of a series and year; its row is locked by the transaction that takes the next one, so none is skipped.';

create table invoice (
    id            bigint generated always as identity primary key,
    series        text not null constraint invoice_series check (series in ('INVOICE', 'CREDIT_NOTE')),
    year          integer not null,
    running       integer not null,
    number        text not null constraint invoice_number unique,
    order_id      bigint not null constraint invoice_order references customer_order,
    order_number  text not null,
    corrects      bigint constraint invoice_corrects references invoice,
    issued_on     date not null,
    due_on        date not null constraint invoice_due check (due_on >= issued_on),
    seller        text not null,
    tax_number    text not null,
    customer      text not null,
    vat_mode      text not null constraint invoice_vat_mode check (vat_mode in ('NONE', 'INCLUDED', 'ON_TOP')),
    vat_rounding  text not null constraint invoice_vat_rounding check (vat_rounding in ('BY_LINE', 'BY_TOTAL')),
    currency      char(3) not null,
    net           numeric(19, 4) not null,
    vat           numeric(19, 4) not null,
    gross         numeric(19, 4) not null,
    reason        text not null default '',
    who           text not null,
    issued_at     timestamptz not null,
    constraint invoice_running_once unique (series, year, running),
    constraint invoice_adds_up check (net + vat = gross and gross >= 0),
    constraint invoice_credit_corrects check ((series = 'CREDIT_NOTE') = (corrects is not null))
);
create index invoice_by_order on invoice (order_id);
create index invoice_by_day on invoice (issued_on, id);
comment on table invoice is 'Issued invoices and credit notes, as they were: seller and customer in the words of that day. Amounts of a credit note are positive and count the other way.';

create table invoice_line (
    invoice_id   bigint not null constraint invoice_line_invoice references invoice,
    position     integer not null,
    what         text not null,
    quantity     numeric(19, 4) not null,
    unit_price   numeric(19, 4) not null,
    vat_percent  numeric(9, 4) not null constraint invoice_line_vat check (vat_percent >= 0),
    net          numeric(19, 4) not null,
    vat          numeric(19, 4) not null,
    gross        numeric(19, 4) not null,
    constraint invoice_line_key primary key (invoice_id, position),
    constraint invoice_line_adds_up check (net + vat = gross)
);
comment on table invoice_line is 'Lines of an issued paper. unit_price is as it was said (with or without tax); net, vat and gross of the lines add up to the paper''s.';

create function invoice_takes_its_number() returns trigger language plpgsql as $$
begin
    insert into invoice_counter as c (series, year, last) values (new.series, new.year, 1)
        on conflict (series, year) do update set last = c.last + 1
        returning last into new.running;
    new.number := case new.series when 'INVOICE' then '' else 'C' end || new.year || '-' || lpad(new.running::text, 4, '0');
    return new;
end $$;
create trigger invoice_takes_its_number before insert on invoice for each row execute function invoice_takes_its_number();

create function issued_papers_stand() returns trigger language plpgsql as $$
begin
    raise exception 'An issued paper stands as it is; correct it by a credit note.' using errcode = 'restrict_violation';
end $$;
create trigger invoice_stands before update or delete on invoice for each row execute function issued_papers_stand();
create trigger invoice_line_stands before update or delete on invoice_line for each row execute function issued_papers_stand();

create function invoice_lines_add_up() returns trigger language plpgsql as $$
begin
    if (select (sum(l.net), sum(l.vat)) <> (i.net, i.vat)
          from invoice i left join invoice_line l on l.invoice_id = i.id where i.id = new.id group by i.id) is distinct from false then
        raise exception 'The lines of paper % do not add up to it.', new.number using errcode = 'check_violation';
    end if;
    if new.corrects is not null and (select sum(c.gross) from invoice c where c.corrects = new.corrects)
            > (select gross from invoice where id = new.corrects) then
        raise exception 'Paper % would be credited beyond its amount.', new.corrects using errcode = 'check_violation';
    end if;
    return null;
end $$;
create constraint trigger invoice_lines_add_up after insert on invoice
    deferrable initially deferred for each row execute function invoice_lines_add_up();

create table order_payment (
    id        bigint generated always as identity primary key,
    order_id  bigint not null constraint order_payment_order references customer_order,
    kind      text not null constraint order_payment_kind check (kind in ('DEPOSIT', 'PAYMENT', 'REFUND')),
    way       text not null constraint order_payment_way check (way in ('CASH', 'TRANSFER', 'CARD', 'OTHER')),
    amount    numeric(19, 4) not null constraint order_payment_positive check (amount > 0),
    currency  char(3) not null,
    paid_on   date not null,
    note      text not null default '',
    who       text not null,
    at        timestamptz not null
);
create index order_payment_by_order on order_payment (order_id);
create trigger order_payment_stands before update or delete on order_payment for each row execute function issued_papers_stand();
comment on table order_payment is 'Money taken for an order and given back; lines are added, a refund is a line of its own.';

create view order_money as
select o.id as order_id, o.number, c.name as customer, o.currency,
       case when p.papers > 0 then p.invoiced else case when o.state = 'CANCELLED' then 0 else o.price_gross end end as due,
       coalesce((select sum(case kind when 'REFUND' then -amount else amount end)
                   from order_payment where order_id = o.id), 0) as received,
       p.due_on
  from customer_order o
  join customer c on c.id = o.customer_id
  cross join lateral (select count(*) as papers,
                             coalesce(sum(case series when 'INVOICE' then gross else -gross end), 0) as invoiced,
                             max(due_on) filter (where series = 'INVOICE') as due_on
                        from invoice where order_id = o.id) p
 where o.state <> 'QUOTE';
comment on view order_money is 'For each order that was taken: what is due in the end and what was received. Read by reports.';
