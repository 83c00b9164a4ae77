-- Orders, supplies and sheets carry prices in the workshop's currency; sums over them mean something only while it stays.
create function workshop_currency_stays() returns trigger language plpgsql as $$
begin
    if new.currency <> old.currency and (exists (select from customer_order) or exists (select from supply_item)
            or exists (select from sheet)) then
        raise exception 'The currency is fixed once something has a price.'
            using errcode = 'check_violation', constraint = 'workshop_currency_stays';
    end if;
    return new;
end $$;
create trigger workshop_currency_stays before update on workshop_profile
    for each row execute function workshop_currency_stays();
