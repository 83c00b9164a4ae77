create table supplier (
    id       bigint generated always as identity primary key,
    name     text not null constraint supplier_name_given check (name <> ''),
    contact  text not null default '',
    constraint supplier_name_once unique (name)
);
comment on table supplier is 'Where supplies are bought.';

create table supply_item (
    id                bigint generated always as identity primary key,
    name              text not null constraint supply_name_given check (name <> ''),
    kind              text not null constraint supply_kind check (kind in
                      ('STICKER_PAPER','LAMINATE','MASKING_TAPE','INK','BOX','BAG','LABEL','LENS','FILTER','BLADE','OTHER')),
    use_unit          text not null constraint supply_use_unit check (use_unit in ('PIECE','SHEET','METRE','MILLILITRE')),
    width_mm          numeric(10, 3) constraint supply_width check (width_mm > 0),
    height_mm         numeric(10, 3) constraint supply_height check (height_mm > 0),
    purchase_unit     text not null constraint supply_purchase_unit_given check (purchase_unit <> ''),
    use_per_purchase  numeric(19, 6) not null constraint supply_use_per_purchase check (use_per_purchase > 0),
    pvc               text not null constraint supply_pvc check (pvc in ('FREE', 'PVC', 'UNKNOWN')),
    adhesive          text not null constraint supply_adhesive check (adhesive in ('NONE', 'DRY', 'WET', 'UNKNOWN')),
    lead_days         integer not null constraint supply_lead_days check (lead_days between 0 and 365),
    spare_days        integer not null constraint supply_spare_days check (spare_days between 0 and 365),
    usual             boolean not null default false,
    retired           boolean not null default false,
    currency          char(3) not null,
    stock             numeric(19, 6) not null default 0,
    average_cost      numeric(19, 6) not null default 0 constraint supply_average_not_negative check (average_cost >= 0),
    last_movement     integer not null default 0,
    constraint supply_name_once unique (name)
);
create unique index supply_usual_once on supply_item (kind) where usual and not retired;
comment on table supply_item is 'What the workshop uses up, with its stock and moving average cost per use unit as the last movement left them.';
comment on column supply_item.height_mm is 'Of a sheet; absent for a roll, which is used by the metre.';

create table supply_movement (
    id              bigint generated always as identity primary key,
    item_id         bigint not null constraint supply_movement_item references supply_item,
    number          integer not null,
    kind            text not null constraint supply_movement_kind check (kind in
                    ('BOUGHT','USED','SPOILED','COUNTED','RETURNED','SENT_BACK')),
    quantity        numeric(19, 6) not null,
    unit_cost       numeric(19, 6) not null constraint supply_movement_cost check (unit_cost >= 0),
    stock_after     numeric(19, 6) not null,
    average_after   numeric(19, 6) not null,
    order_id        bigint,
    supplier_id     bigint constraint supply_movement_supplier references supplier,
    total_paid      numeric(19, 4),
    below_zero_ok   boolean not null default false,
    note            text not null default '',
    who             text not null,
    at              timestamptz not null,
    constraint supply_movement_once unique (item_id, number),
    constraint supply_movement_sign check (
        (kind in ('BOUGHT', 'RETURNED') and quantity > 0) or (kind in ('USED', 'SPOILED', 'SENT_BACK') and quantity < 0)
        or kind = 'COUNTED'),
    constraint supply_movement_paid check ((kind = 'BOUGHT') = (total_paid is not null)),
    constraint supply_never_silently_below_zero check (stock_after >= 0 or quantity >= 0 or (below_zero_ok and note <> ''))
);
create index supply_movement_by_order on supply_movement (order_id) where order_id is not null;
create index supply_movement_by_time on supply_movement (item_id, at);
comment on table supply_movement is 'The ledger of supplies: lines are added, never changed. Quantities in use units, out is negative.';

create function supply_movement_follows() returns trigger language plpgsql as $$
declare
    held supply_item;
begin
    select * into held from supply_item where id = new.item_id for update;
    if new.number <> held.last_movement + 1 or new.stock_after <> held.stock + new.quantity then
        raise exception 'This movement does not follow the last one of its item.' using errcode = 'serialization_failure';
    end if;
    update supply_item set stock = new.stock_after, average_cost = new.average_after, last_movement = new.number
     where id = new.item_id;
    return new;
end $$;
create trigger supply_movement_follows before insert on supply_movement
    for each row execute function supply_movement_follows();

create function supply_ledger_never_rewritten() returns trigger language plpgsql as $$
begin
    raise exception 'The ledger of supplies is added to, never changed.' using errcode = 'restrict_violation';
end $$;
create trigger supply_ledger_never_rewritten before update or delete on supply_movement
    for each row execute function supply_ledger_never_rewritten();
