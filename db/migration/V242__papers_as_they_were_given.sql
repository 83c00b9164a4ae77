create table kept_paper (
    id          bigint generated always as identity primary key,
    kind        text not null constraint kept_paper_kind check (kind in ('QUOTE', 'INVOICE', 'CREDIT_NOTE')),
    order_id    bigint not null constraint kept_paper_order references customer_order,
    invoice_id  bigint constraint kept_paper_invoice references invoice constraint kept_paper_once unique,
    running     integer not null,
    about       text not null,
    says        text not null,
    content     bytea not null constraint kept_paper_content check (octet_length(content) > 0),
    sha256      bytea not null constraint kept_paper_sha256 check (sha256 = sha256(content)),
    late        boolean not null,
    kept_at     timestamptz not null,
    kept_by     text not null,
    constraint kept_paper_of_invoice check ((kind = 'QUOTE') = (invoice_id is null))
);
create unique index kept_paper_quote_once on kept_paper (order_id, running) where kind = 'QUOTE';
comment on table kept_paper is 'Quotes, invoices and credit notes as they were given away: the very bytes, their digest, and the words on them. Late: issued before papers were kept, set at its first download afterwards. Rows are only added.';
create trigger kept_paper_stands before update or delete on kept_paper for each row execute function issued_papers_stand();
