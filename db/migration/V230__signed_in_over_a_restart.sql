create table stay_signed_in (
    token_sha256 text primary key constraint stay_signed_in_hashed check (token_sha256 ~ '^[0-9a-f]{64}$'),
    account_id   bigint not null constraint stay_signed_in_account references account (id) on delete cascade,
    made_at      timestamptz not null,
    last_seen_at timestamptz not null
);
create index stay_signed_in_by_account on stay_signed_in (account_id);
comment on table stay_signed_in is 'A browser that is signed in, so that a restart of the program does not sign it out: only the hash of its token is kept, and only for as long as a session would last.';
