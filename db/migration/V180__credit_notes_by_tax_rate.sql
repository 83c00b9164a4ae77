-- Lines of one paper may carry several tax rates; a credit note never takes back more of a rate than was invoiced at it.
create function credit_within_each_rate() returns trigger language plpgsql as $$
declare
    beyond numeric;
begin
    if new.corrects is null then
        return null;
    end if;
    select l.vat_percent into beyond
      from invoice p join invoice_line l on l.invoice_id = p.id
     where p.id = new.corrects or p.corrects = new.corrects
     group by l.vat_percent
    having sum(case when p.id = new.corrects then l.gross else -l.gross end) < 0
        or sum(case when p.id = new.corrects then l.vat else -l.vat end) < 0
     limit 1;
    if found then
        raise exception 'Paper % would be credited beyond what was invoiced at % percent.', new.corrects, beyond
            using errcode = 'check_violation';
    end if;
    return null;
end $$;
create constraint trigger credit_within_each_rate after insert on invoice
    deferrable initially deferred for each row execute function credit_within_each_rate();
