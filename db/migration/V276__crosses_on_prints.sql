create table print_cross (
    one      boolean primary key default true constraint print_cross_one check (one),
    printed  boolean not null,
    span_mm  numeric(6, 3) not null constraint print_cross_span check (span_mm between 1 and 10),
    away_mm  numeric(6, 3) not null constraint print_cross_away check (away_mm between 0.5 and 20)
);
comment on table print_cross is 'Small crosses printed in the overhang, by which the laser finds where a print lies.';
comment on column print_cross.away_mm is 'From the two nearest edges of the finished picture out to the middle of a cross.';
insert into print_cross (printed, span_mm, away_mm) values (true, 2, 1.5);

alter table print_run
    add column cross_span_mm numeric(6, 3) constraint print_run_cross_span check (cross_span_mm > 0),
    add column cross_away_mm numeric(6, 3) constraint print_run_cross_away check (cross_away_mm > 0),
    add constraint print_run_cross_whole check ((cross_span_mm is null) = (cross_away_mm is null));
comment on column print_run.cross_span_mm is
    'The crosses of this run as they were set when it was proposed; none on runs without crosses.';
