alter table customer_order drop constraint customer_order_pieces;
alter table customer_order add constraint customer_order_pieces check (piece_columns >= 1 and piece_rows >= 1
    and (piece_columns * piece_rows between 2 and 2000
         or piece_columns = 1 and piece_rows = 1 and cardinality(shape_names) = 1));
alter table customer_order drop constraint customer_order_pieces_counted;
alter table customer_order add constraint customer_order_pieces_counted check (pieces between 2 and 2000
    or pieces = 1 and piece_columns = 1 and piece_rows = 1);

create table piece_again (
    order_id bigint not null constraint piece_again_pk primary key
             constraint piece_again_is_an_order references customer_order,
    of_order bigint not null constraint piece_again_of_order references customer_order
             constraint piece_again_of_another check (of_order <> order_id),
    piece    integer not null constraint piece_again_piece_counted check (piece >= 1)
);
comment on table piece_again is 'Orders of one single piece, lost or broken, and the order whose piece it is. Rows are only added.';
create index piece_again_by_order on piece_again (of_order, order_id);
create trigger piece_again_is_only_added_to before update or delete on piece_again
    for each row execute function refuse_change();
