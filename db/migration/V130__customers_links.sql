create table proof_link (
    id           bigint generated always as identity primary key,
    order_id     bigint not null constraint proof_link_order references customer_order,
    token_sha256 text not null constraint proof_link_token unique,
    made_at      timestamptz not null,
    made_by      text not null,
    expires_at   timestamptz not null,
    seen_at      timestamptz,
    withdrawn_at timestamptz,
    constraint proof_link_lasts check (expires_at > made_at)
);
create unique index proof_link_one_open on proof_link (order_id) where withdrawn_at is null;
comment on table proof_link is 'Private links for customers. Only the hash of a token is kept; an order has one open link at most.';

create table proof_approval (
    id          bigint generated always as identity primary key,
    order_id    bigint not null constraint proof_approval_order references customer_order,
    link_id     bigint not null constraint proof_approval_link references proof_link,
    at          timestamptz not null,
    by_name     text not null constraint proof_approval_named check (btrim(by_name) <> ''),
    fingerprint text not null constraint proof_approval_fingerprint check (fingerprint ~ '^[0-9a-f]{64}$'),
    picture_id  uuid not null constraint proof_approval_picture references picture,
    shown       text not null,
    may_use     boolean not null constraint proof_approval_may_use check (may_use)
);
comment on table proof_approval is 'What a customer approved by link: picture, crop and pattern, held fast by their SHA-256. Lines are only ever added.';
create index proof_approval_by_order on proof_approval (order_id, id);
create trigger proof_approval_is_only_added_to before update or delete on proof_approval
    for each row execute function refuse_change();

create table proof_wish (
    id         bigint generated always as identity primary key,
    order_id   bigint not null constraint proof_wish_order references customer_order,
    link_id    bigint not null constraint proof_wish_link references proof_link,
    at         timestamptz not null,
    wish       text not null constraint proof_wish_said check (length(wish) between 1 and 2000),
    settled_at timestamptz,
    settled_by text,
    constraint proof_wish_settled check ((settled_at is null) = (settled_by is null))
);
comment on table proof_wish is 'What a customer wants changed, until somebody has seen to it.';
create index proof_wish_open on proof_wish (order_id) where settled_at is null;
