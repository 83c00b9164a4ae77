create table postal_address (
    id           bigint generated always as identity primary key,
    customer_id  bigint constraint postal_address_customer references customer,
    order_id     bigint constraint postal_address_order references customer_order,
    country      char(2) not null constraint postal_address_country check (country ~ '^[A-Z]{2}$'),
    name         text not null constraint postal_address_name check (btrim(name) <> ''),
    organisation text not null default '',
    street       text not null default '',
    district     text not null default '',
    town         text not null default '',
    region       text not null default '',
    postal_code  text not null default '',
    constraint postal_address_of_one check ((customer_id is null) <> (order_id is null)),
    constraint postal_address_once_a_customer unique (customer_id),
    constraint postal_address_once_an_order unique (order_id)
);
comment on table postal_address is 'Where a customer''s parcels go, or where one order goes instead, in its parts.';

create table delivery_settings (
    id            integer primary key default 1 constraint delivery_settings_one check (id = 1),
    home_country  text not null default '' constraint delivery_settings_country check (home_country ~ '^([A-Z]{2})?$'),
    label_words   text not null default '',
    care_words    text not null default 'Keep dry and out of the sun. Wipe with a soft dry cloth. Bare wood edges may smell of smoke for some days: air the pieces.',
    hs_code       text not null default '9503.00',
    contents      text not null default 'Jigsaw puzzle of wood',
    gtin          text not null default '' constraint delivery_settings_gtin check (gtin ~ '^([0-9]{13})?$'),
    label_kind    text not null default 'ROLL_62_X_100'
);
comment on table delivery_settings is 'What is set once for parcels: from where, and the owner''s words on labels, cards and customs data.';
comment on column delivery_settings.hs_code is 'Heading 9503 of the Harmonized System holds puzzles of all kinds; the sender is answerable for the code.';
insert into delivery_settings default values;
