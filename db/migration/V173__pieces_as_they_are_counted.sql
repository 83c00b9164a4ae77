alter table customer_order add column pieces integer
    constraint customer_order_pieces_counted check (pieces between 2 and 2000);
comment on column customer_order.pieces is
    'Pieces of one puzzle as they are counted into the box, where they are others than columns by rows: a personal piece adds itself and may swallow others.';
