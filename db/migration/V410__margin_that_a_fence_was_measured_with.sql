alter table placing_position add column hold_down_mm double precision
    constraint placing_position_hold_down check (hold_down_mm >= 0);
comment on column placing_position.hold_down_mm is
    'Board beyond the sticker then: with another margin a print comes to another place against the fence.';

-- what was measured before was, as far as is known, measured with the margin of today
alter table placing_position disable trigger placing_position_only_added;
update placing_position set hold_down_mm = coalesce((select max(hold_down_margin_mm) from trade_numbers), 0);
alter table placing_position enable trigger placing_position_only_added;
alter table placing_position alter column hold_down_mm set not null;
