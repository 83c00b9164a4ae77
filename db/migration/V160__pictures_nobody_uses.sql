create table picture_cleared (
    picture_id  uuid constraint picture_cleared_key primary key,
    file_name   text not null,
    sha256      text not null,
    byte_count  bigint not null,
    received_at timestamptz not null,
    cleared_at  timestamptz not null
);
comment on table picture_cleared is 'Pictures that were thrown away because nothing used them; lines are only ever added.';
create trigger picture_cleared_is_only_added_to before update or delete on picture_cleared
    for each row execute function refuse_change();
create index picture_by_arrival on picture (received_at);
create index proof_approval_by_picture on proof_approval (picture_id);
