create table packing_proof (
    id             bigint generated always as identity constraint packing_proof_pk primary key,
    order_id       bigint not null constraint packing_proof_of_order references customer_order,
    puzzle         integer not null constraint packing_proof_puzzle_counted check (puzzle >= 1),
    expected       integer not null constraint packing_proof_expected_counted check (expected >= 1),
    seen           integer not null constraint packing_proof_seen_counted check (seen >= 0),
    foreign_pieces integer not null constraint packing_proof_foreign_counted check (foreign_pieces >= 0),
    missing        text not null,
    troubles       text not null,
    kept_at        timestamptz not null,
    kept_by        text not null
);
comment on table packing_proof is
    'What photos of the pieces of one puzzle showed before it was packed: how many, which are missing. Rows are only added.';
comment on column packing_proof.puzzle is 'Which of the order''s puzzles, from 1.';
comment on column packing_proof.missing is
    'Numbers of the missing pieces in reading order, apart by blanks; where several are too alike to tell, with / between them.';
create index packing_proof_by_order on packing_proof (order_id, id);

create table packing_proof_photo (
    proof_id bigint not null constraint packing_proof_photo_of_proof references packing_proof,
    place    integer not null constraint packing_proof_photo_place_counted check (place >= 0),
    width    integer not null constraint packing_proof_photo_width_counted check (width > 0),
    height   integer not null constraint packing_proof_photo_height_counted check (height > 0),
    content  bytea not null constraint packing_proof_photo_size check (octet_length(content) between 1 and 2000000),
    edges    text not null,
    constraint packing_proof_photo_pk primary key (proof_id, place)
);
comment on table packing_proof_photo is
    'The photos of a proof, made small, and where in them each piece was seen: a line for each, its number (0 for a piece of another puzzle) and u v in turn.';

create trigger packing_proof_is_only_added_to before update or delete on packing_proof
    for each row execute function refuse_change();
create trigger packing_proof_photo_is_only_added_to before update or delete on packing_proof_photo
    for each row execute function refuse_change();
