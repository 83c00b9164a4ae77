alter table sheet_rule add column sawn_first boolean not null default false;
comment on column sheet_rule.sawn_first is 'Whether boards beyond every bed may lie in the rack, since they are sawn to size before the laser; up to the largest board all the same.';
