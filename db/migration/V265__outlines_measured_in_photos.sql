create table measuring_print (
    one     boolean primary key default true constraint measuring_print_only_one check (one),
    line_mm double precision not null constraint measuring_print_line_possible check (line_mm between 90 and 110),
    who     text not null,
    at      timestamptz not null
);
comment on table measuring_print is 'How long the 100 mm line of the printed measuring sheet is by the ruler; without a row no photo is measured.';

create table sheet_measured (
    sheet_id       bigint primary key references sheet (id) on delete cascade,
    outline        text not null,
    uncertainty_mm double precision not null constraint sheet_measured_uncertainty_possible check (uncertainty_mm between 0 and 20),
    who            text not null,
    at             timestamptz not null,
    confirmed_by   text,
    confirmed_at   timestamptz,
    constraint sheet_measured_confirmed_by_somebody check ((confirmed_by is null) = (confirmed_at is null))
);
comment on table sheet_measured is 'The outline of a sheet as a photo gave it. Until somebody confirms it with a ruler the sheet itself has it shrunk by its uncertainty.';
