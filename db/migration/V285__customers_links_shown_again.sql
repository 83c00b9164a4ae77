alter table proof_link add column token text
    constraint proof_link_token_form check (token ~ '^[A-Za-z0-9_-]{43}$');
alter table proof_link add constraint proof_link_token_while_open check (token is null or withdrawn_at is null);
comment on column proof_link.token is 'To show the link again while it is open; empty for links made earlier, and as soon as it is withdrawn.';
comment on table proof_link is 'Private links for customers, found by the hash of their token; an order has one open link at most.';
