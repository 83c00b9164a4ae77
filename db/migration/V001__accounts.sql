create table account (
    id            bigint generated always as identity primary key,
    name          text not null constraint account_name_given check (name = btrim(name) and length(name) between 1 and 60),
    role          text not null constraint account_role check (role in ('OWNER', 'MAKER')),
    password_hash text not null constraint account_password_hashed check (password_hash like '{%}%'),
    active        boolean not null default true,
    made_at       timestamptz not null
);
create unique index account_name_once on account (lower(name));
comment on table account is 'Who may sign in. Never deleted, since the history names them; set inactive instead.';
