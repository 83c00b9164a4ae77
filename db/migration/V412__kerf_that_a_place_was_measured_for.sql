alter table placing_position add column kerf_mm double precision
    constraint placing_position_kerf check (kerf_mm >= 0);
comment on column placing_position.kerf_mm is
    'Width of the cut that the place was proven for; with another the proof no longer holds.';

-- what was measured before was proven for the kerf of its machine, which stands as it is today
alter table placing_position disable trigger placing_position_only_added;
update placing_position p set kerf_mm = (select m.kerf_mm from cutting_machine m where m.id = p.machine_id);
alter table placing_position enable trigger placing_position_only_added;
alter table placing_position alter column kerf_mm set not null;
