create table booking (
    key   text primary key constraint booking_key_given check (length(key) between 1 and 200),
    said  text not null,
    made  bigint,
    at    timestamptz not null default now()
);
comment on table booking is 'One row for each booking, written in its transaction: the key made when its form opened, what was asked, and the number of what it made. A key that comes again books nothing.';

create function booking_stands() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' and old.made is null and new.made is not null
            and (new.key, new.said, new.at) = (old.key, old.said, old.at) then
        return new;
    end if;
    raise exception 'A booking stands as it is.' using errcode = 'restrict_violation';
end $$;
create trigger booking_stands before update or delete on booking for each row execute function booking_stands();
