alter table customer add column note text not null default ''
    constraint customer_note_length check (length(note) <= 4000);
comment on column customer.note is 'What the workshop wants to remember of a customer; not printed on any paper.';

create index customer_order_by_day on customer_order (promised_on, id);
create index customer_order_by_price on customer_order (price_gross desc, id desc);

-- What is found by any word from every screen. A workshop has some thousand rows of it: read from end to end that takes
-- milliseconds, so nothing has to be kept in step.
create view findable as
select 'ORDER' as kind, o.id, o.number as address, o.number as title, c.name as about, o.created_at as at,
       lower(concat_ws(' ', o.number, c.name, c.contact, c.address, c.note, o.note, o.state, o.board_material,
           array_to_string(o.shape_names, ' '))) as words
  from customer_order o join customer c on c.id = o.customer_id
union all
select 'CUSTOMER', c.id, c.id::text, c.name, c.contact, c.created_at,
       lower(concat_ws(' ', c.name, c.contact, c.address, c.note))
  from customer c
union all
select 'SHEET', s.id, s.id::text, s.id::text, concat_ws(', ', m.name, nullif(s.place, '')), s.entered_at,
       lower(concat_ws(' ', 'sheet board', s.id, s.place, s.note, m.name, s.state))
  from sheet s join board_material m on m.id = s.material
union all
select 'SUPPLY', i.id, '', i.name, '', null,
       lower(concat_ws(' ', 'supply', i.name, i.purchase_unit))
  from supply_item i;
comment on view findable is 'Orders, customers, sheets and supplies with all words by which somebody may look for them. Carries no money.';
