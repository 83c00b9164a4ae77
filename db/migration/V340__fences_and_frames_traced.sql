create table placing_fence (
    id         bigint generated always as identity constraint placing_fence_pk primary key,
    machine_id bigint not null constraint placing_fence_machine references cutting_machine,
    laid_by    text not null,
    laid_at    timestamptz not null
);
comment on table placing_fence is
    'When the locating fence was put on a machine''s bed; boards measured before say nothing about where it lies now. Rows are only added.';
create index placing_fence_of_machine on placing_fence (machine_id, laid_at);

create table placing_traced (
    position_id bigint constraint placing_traced_pk primary key
        constraint placing_traced_position references placing_position,
    traced_by   text not null,
    traced_at   timestamptz not null
);
comment on table placing_traced is
    'Further boards of a cut that runs: the frame at this place was traced and lies inside the print. Rows are only added.';

create trigger placing_fence_only_added before update or delete on placing_fence
    for each row execute function cutting_only_added();
create trigger placing_traced_only_added before update or delete on placing_traced
    for each row execute function cutting_only_added();

create or replace function cutting_start_is_checked() returns trigger language plpgsql as $$
begin
    if (select count(distinct item) from cutting_check
        where job_id = new.id
          and (item not in ('GAP_SET', 'AIR_ON') or new.dialled_at is null or checked_at >= new.dialled_at)
          and (item <> 'FRAME_TRACED' or done and (new.placed_at is null or checked_at >= new.placed_at))) < 9 then
        raise exception 'Cut job % has unanswered checks', new.id using errcode = 'check_violation';
    end if;
    return new;
end $$;
