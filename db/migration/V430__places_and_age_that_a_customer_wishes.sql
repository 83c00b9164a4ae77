-- beside words: places marked on the picture, and the age that the puzzle must not be too hard for
alter table proof_wish drop constraint proof_wish_said;
alter table proof_wish add column picture_id uuid;
alter table proof_wish add column marks double precision[] not null default '{}';
alter table proof_wish add column years integer constraint proof_wish_years check (years between 2 and 14);
alter table proof_wish add constraint proof_wish_said
    check (length(wish) <= 2000 and (length(wish) > 0 or cardinality(marks) > 0 or years is not null));
alter table proof_wish add constraint proof_wish_marks
    check (cardinality(marks) % 4 = 0 and (cardinality(marks) = 0 or picture_id is not null));
comment on column proof_wish.marks is
    'Places of the upright picture, four numbers each: middle across and down and half width in shares of it, 1 where its edge is to be cut.';
