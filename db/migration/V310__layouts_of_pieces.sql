alter table customer_order
    add column uneven_pieces boolean not null default false,
    add column kept_whole    double precision[] not null default '{}'
        constraint customer_order_kept_whole check (cardinality(kept_whole) % 4 = 0 and cardinality(kept_whole) <= 48),
    drop constraint customer_order_shapes,
    add constraint customer_order_shapes check
        (cardinality(shape_names) = cardinality(shape_outlines) and cardinality(shape_names) <= 24);
comment on column customer_order.uneven_pieces is 'Rows and columns of differing width instead of all alike.';
comment on column customer_order.kept_whole is
    'Ovals that no line may cut: for each four numbers in millimetres, across and down to its middle, half its width, half its height.';
