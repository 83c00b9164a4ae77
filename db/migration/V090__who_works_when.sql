create table working_person (
    id     bigint generated always as identity primary key,
    name   text not null constraint working_person_name_given check (btrim(name) <> ''),
    does   text[] not null constraint working_person_does check (does <@ array
           ['PRINT','LAMINATE','SHEET_PREP','STICK','MASK','CUT','FINISH','PACK','HAND_OVER']),
    constraint working_person_name_once unique (name)
);
comment on table working_person is 'Whose hands do the work, and which stages they are given.';

create table working_hours (
    id          bigint generated always as identity primary key,
    person_id   bigint constraint working_hours_person references working_person on delete cascade,
    machine     text constraint working_hours_machine check (machine in ('LASER', 'PRINTER')),
    weekday     smallint not null constraint working_hours_weekday check (weekday between 1 and 7),
    from_minute integer not null,
    to_minute   integer not null,
    constraint working_hours_of_one check ((person_id is null) <> (machine is null)),
    constraint working_hours_forward check (from_minute >= 0 and from_minute < to_minute and to_minute <= 1440)
);
comment on table working_hours is 'Hours in an ordinary week, of a person or of a machine; 1 is Monday, minutes after midnight.';
create index working_hours_by_person on working_hours (person_id);

create table free_day (
    id        bigint generated always as identity primary key,
    person_id bigint constraint free_day_person references working_person on delete cascade,
    day       date not null,
    note      text not null default '',
    constraint free_day_once unique nulls not distinct (person_id, day)
);
comment on table free_day is 'Days without work: of one person, or holidays of the whole workshop when no person is named.';

create table agreed_evening (
    id          bigint generated always as identity primary key,
    person_id   bigint not null constraint agreed_evening_person references working_person on delete cascade,
    day         date not null,
    from_minute integer not null,
    to_minute   integer not null,
    constraint agreed_evening_once unique (person_id, day),
    constraint agreed_evening_forward check (from_minute >= 0 and from_minute < to_minute and to_minute <= 1440)
);
comment on table agreed_evening is 'Extra hours agreed for one day; the machines may run in them.';

create table delivery_way (
    id              bigint generated always as identity primary key,
    name            text not null constraint delivery_way_name_given check (btrim(name) <> ''),
    leaves_on       smallint[] not null constraint delivery_way_leaves check (cardinality(leaves_on) between 1 and 7),
    cut_off         time not null,
    days_on_the_way integer not null constraint delivery_way_days check (days_on_the_way between 0 and 60),
    arrives_on      smallint[] not null constraint delivery_way_arrives check (cardinality(arrives_on) between 1 and 7),
    usual           boolean not null default false,
    constraint delivery_way_name_once unique (name)
);
comment on table delivery_way is 'How orders reach their customers: when they leave, and how many delivery days they take.';
create unique index delivery_way_one_usual on delivery_way (usual) where usual;

-- One maker at an ordinary bench to begin with; the laser keeps away from early mornings and evenings (common practice).
with maker as (
    insert into working_person (name, does) values
        ('Maker', array['PRINT','LAMINATE','SHEET_PREP','STICK','MASK','CUT','FINISH','PACK','HAND_OVER']) returning id)
insert into working_hours (person_id, weekday, from_minute, to_minute)
select id, weekday, span[1], span[2] from maker, generate_series(1, 5) as weekday,
    (values (array[480, 720]), (array[780, 1020])) as hours (span);
insert into working_hours (machine, weekday, from_minute, to_minute)
select machine, weekday, 480, 1080 from (values ('LASER'), ('PRINTER')) as m (machine), generate_series(1, 5) as weekday;
insert into delivery_way (name, leaves_on, cut_off, days_on_the_way, arrives_on, usual) values
    ('Collection', '{1,2,3,4,5}', '17:00', 0, '{1,2,3,4,5,6,7}', true),
    ('Parcel', '{1,2,3,4,5}', '16:00', 2, '{1,2,3,4,5,6}', false);
