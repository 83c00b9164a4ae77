-- A parcel that is sent before the workshop's own holidays arrives during them; on a public holiday nothing arrives. Until now
-- each free day of the whole workshop counted as the latter, so those that are kept stay so.
alter table free_day
    add column delivered boolean not null default false,
    add constraint free_day_delivered_closed check (not delivered or person_id is null);
comment on column free_day.delivered is 'The workshop is closed, but carriers deliver: not a public holiday.';
