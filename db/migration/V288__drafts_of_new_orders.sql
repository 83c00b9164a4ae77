create table order_form_draft (
    person   text not null,
    at       timestamptz not null,
    names    text[] not null,
    contents text[] not null,
    constraint order_form_draft_key primary key (person),
    constraint order_form_draft_pairs check (cardinality(names) = cardinality(contents))
);
comment on table order_form_draft is 'What a person had typed into New order and not saved yet; one each, forgotten after a month.';
