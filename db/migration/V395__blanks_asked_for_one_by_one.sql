-- Blocks of several blanks were counted as one large blank, and orders that were cancelled as well.
create or replace view asked_blank as
select o.confirmed_at, b.width_mm, b.height_mm, o.board_material as material, o.board_grade as grade,
       o.board_thickness_mm as thickness_mm, b.across, b.down
from order_blank b join customer_order o on o.id = b.order_id
where o.confirmed_at is not null and o.state <> 'CANCELLED';
comment on view asked_blank is 'Blocks of blanks of confirmed orders with the kind of board they are cut from: what the workshop is asked for.';

create table asked_kind_correction (
    material     text not null constraint asked_kind_correction_material references board_material,
    grade        text not null,
    thickness_mm double precision not null constraint asked_kind_correction_thickness check (thickness_mm > 0),
    per_week     double precision not null constraint asked_kind_correction_rate check (per_week between 0 and 1000),
    who          text not null,
    at           timestamptz not null,
    constraint asked_kind_correction_once primary key (material, grade, thickness_mm)
);
comment on table asked_kind_correction is 'How many blanks are asked for on a kind of board in a week, where the owner knows better than the orders so far.';
