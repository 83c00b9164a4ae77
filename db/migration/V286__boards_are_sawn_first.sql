-- A new workshop usually owns whole boards, larger than its laser's bed, and saws them; one that runs keeps what it chose.
alter table sheet_rule alter column sawn_first set default true;
update sheet_rule set sawn_first = true where not exists (select 1 from account);
