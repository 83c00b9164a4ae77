alter table customer_order
    add column shape_names    text[] not null default '{}',
    add column shape_outlines text[] not null default '{}',
    add constraint customer_order_shapes check
        (cardinality(shape_names) = cardinality(shape_outlines) and cardinality(shape_names) <= 8);
comment on column customer_order.shape_names is 'Personal pieces of the pattern, what each shows; usually none.';
comment on column customer_order.shape_outlines is
    'Their outlines in millimetres, every digit kept: the same order draws the same pattern forever, whatever faces a machine has.';

alter table order_blank
    add column part text not null default 'PUZZLE' constraint order_blank_part check (part in ('PUZZLE', 'TRAY'));
comment on column order_blank.part is 'What lies on the block: puzzles, or frames and backings of trays.';
