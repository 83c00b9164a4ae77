alter table measuring_print drop constraint measuring_print_only_one;
alter table measuring_print drop column one;
alter table measuring_print add column printer text not null default ''
    constraint measuring_print_printer_short check (length(printer) <= 60);
alter table measuring_print add constraint measuring_print_pk primary key (printer);
comment on table measuring_print is
    'How long the 100 mm line of a measuring sheet is by the ruler, for each printer; the newest is proposed. Without a row no photo is measured.';
comment on column measuring_print.printer is 'As the workshop calls it; empty for the one that was confirmed before printers had names.';
