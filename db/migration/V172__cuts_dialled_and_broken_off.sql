alter table cutting_job add column dialled_at timestamptz;
comment on column cutting_job.dialled_at is
    'When another gap or air assist was dialled in for this job; what was checked of them before no longer counts.';

create or replace function cutting_start_is_checked() returns trigger language plpgsql as $$
begin
    if (select count(distinct item) from cutting_check
        where job_id = new.id
          and (item not in ('GAP_SET', 'AIR_ON') or new.dialled_at is null or checked_at >= new.dialled_at)) < 9 then
        raise exception 'Cut job % has unanswered checks', new.id using errcode = 'check_violation';
    end if;
    return new;
end $$;
