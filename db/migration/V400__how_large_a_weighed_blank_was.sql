alter table blank_weighed
    add column width_mm numeric(10, 3),
    add column height_mm numeric(10, 3),
    add constraint blank_weighed_size check
        ((width_mm is null) = (height_mm is null) and (width_mm is null or width_mm > 0 and height_mm > 0));
comment on column blank_weighed.width_mm is 'Of the blank that lay on the scale; null for those weighed before this was noted.';
