create table letter_wording (
    kind        text primary key,
    subject     text not null constraint letter_wording_subject check (subject <> ''),
    body        text not null constraint letter_wording_body check (body <> ''),
    changed_at  timestamptz not null,
    changed_by  text not null
);
comment on table letter_wording is 'The owner''s own wording of a kind of letter; where there is none the program''s words stand.';

create table letter_settings (
    id              smallint primary key default 1 constraint letter_settings_one_row check (id = 1),
    first_reminder  integer not null constraint letter_first_reminder check (first_reminder between 1 and 365),
    second_reminder integer not null constraint letter_second_reminder check (second_reminder between 1 and 365),
    last_reminder   integer not null constraint letter_last_reminder check (last_reminder between 1 and 365),
    sending         boolean not null default false,
    host            text not null default '',
    port            integer not null default 587 constraint letter_port check (port between 1 and 65535),
    security        text not null default 'STARTTLS' constraint letter_security check (security in ('STARTTLS', 'TLS', 'NONE')),
    user_name       text not null default '',
    password        bytea,
    from_name       text not null default '',
    from_address    text not null default '',
    constraint letter_sending_has_a_server check (not sending or (host <> '' and from_address <> ''))
);
comment on table letter_settings is 'How letters leave: when reminders are due and the mail server. The password is encrypted with a key that lies in the data folder, not in the database. One row.';
insert into letter_settings (first_reminder, second_reminder, last_reminder) values (7, 14, 14);

create table letter (
    id         bigint generated always as identity primary key,
    order_id   bigint not null constraint letter_order references customer_order,
    kind       text not null,
    way        text not null constraint letter_way check (way in ('BY_HAND', 'MAIL')),
    recipient  text not null,
    subject    text not null,
    body       text not null,
    attached   text not null,
    made_at    timestamptz not null,
    made_on    date not null,
    made_by    text not null
);
create index letter_of_order on letter (order_id, id desc);
create index letter_of_kind on letter (kind, order_id);
comment on table letter is 'What was written about an order, as it was sent; private links are not kept. Rows are only added.';

create table letter_outbox (
    letter_id       bigint primary key constraint letter_outbox_letter references letter,
    message_id      text not null constraint letter_outbox_message_id unique,
    message         bytea,
    state           text not null constraint letter_outbox_state
                    check (state in ('WAITING', 'CLAIMED', 'SENT', 'FAILED', 'ASKS', 'WITHDRAWN')),
    tries           integer not null default 0,
    next_try        timestamptz not null,
    claim           text,
    claimed_at      timestamptz,
    handing_over_at timestamptz,
    sent_at         timestamptz,
    fault           text not null default '',
    constraint letter_outbox_claim check ((state = 'CLAIMED') = (claim is not null)),
    constraint letter_outbox_sent check ((state = 'SENT') = (sent_at is not null)),
    constraint letter_outbox_message check (message is not null or state in ('SENT', 'WITHDRAWN'))
);
create index letter_outbox_next on letter_outbox (next_try) where state = 'WAITING';
create index letter_outbox_open on letter_outbox (state) where state in ('CLAIMED', 'FAILED', 'ASKS');
comment on table letter_outbox is 'Letters that the program sends: claimed before the connection is made, marked when the last line is about to be handed over, and again when the server has answered. The message is cleared once it has gone.';
