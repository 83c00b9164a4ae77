alter table sending_way
    add column goes_to text not null default 'ANYWHERE' constraint sending_way_goes_to
        check (goes_to in ('ANYWHERE', 'HOME', 'COUNTRIES')),
    add column countries text not null default '' constraint sending_way_countries
        check (countries ~ '^([A-Z]{2}( [A-Z]{2})*)?$'),
    add constraint sending_way_countries_named check (goes_to <> 'COUNTRIES' or countries <> '');
comment on column sending_way.goes_to is 'Where parcels on it may go: anywhere, only within the country they leave from, or only to the countries named.';
comment on column sending_way.countries is 'Codes of ISO 3166-1 with a space between them; of a way that goes to these only.';
