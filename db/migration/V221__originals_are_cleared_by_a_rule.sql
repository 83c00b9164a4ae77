-- No query ever asked for it.
drop index picture_by_content;

create table picture_rule (
    singleton       boolean default true constraint picture_rule_key primary key constraint picture_rule_singleton check (singleton),
    original_months integer constraint picture_rule_months check (original_months between 1 and 240)
);
comment on table picture_rule is 'How long originals stay after their orders were closed, given up or ran out as quotes; null: for good.';
insert into picture_rule (original_months) values (24);

create table picture_original_cleared (
    picture_id uuid constraint picture_original_cleared_key primary key,
    byte_count bigint not null,
    cleared_at timestamptz not null
);
comment on table picture_original_cleared is 'Originals cleared by the rule; the picture, its smaller copies and its approvals stay. Lines are only ever added.';
create trigger picture_original_cleared_is_only_added_to before update or delete on picture_original_cleared
    for each row execute function refuse_change();
create index picture_original_cleared_by_time on picture_original_cleared (cleared_at);
