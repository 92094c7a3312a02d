-- The whole process: runs of steps, where inputs lay, samples; reports that wait for their parents; what became of reels.

create table step_run (
    plant      text        not null,
    id         text        not null,
    step       text,
    machine    text,
    line       text,
    operator   text,
    shift      text,
    started    timestamptz,
    finished   timestamptz,
    settings   jsonb       not null,
    registered timestamptz not null,
    primary key (plant, id),
    check (finished >= started)
);

create index step_run_machine on step_run (machine, plant, started);

-- A lot of which no more than step and machine is known has no run. Lots that name one run are its outputs.
alter table lot add column run text;
alter table lot add foreign key (plant, run) references step_run (plant, id);
-- The plant does not lead: while there are no statistics yet, such an index would look as good as the key for finding one lot.
create index lot_run on lot (run, plant) where run is not null;
create index lot_machine on lot (machine, plant, made) where machine is not null;
create index lot_made on lot (made, plant);

-- Which stretch of the parent (onto_) became which stretch of the child, as sent; all of it or nothing.
alter table lot_input
    add column position_from double precision,
    add column position_to   double precision,
    add column position_unit text,
    add column onto_from     double precision,
    add column onto_to       double precision,
    add column onto_unit     text,
    add constraint lot_input_position_is_whole check (
        num_nonnulls(position_from, position_to, position_unit, onto_from, onto_to, onto_unit) in (0, 6));

create table lot_sample (
    plant    text             not null,
    lot      text             not null,
    ordinal  int              not null check (ordinal >= 0),
    property text             not null,
    value    double precision not null,
    unit     text             not null,
    taken    timestamptz,
    at_value double precision,
    at_unit  text,
    primary key (plant, lot, ordinal),
    foreign key (plant, lot) references lot (plant, id),
    check (num_nonnulls(at_value, at_unit) in (0, 2))
);

-- What can hardly be so in a lot that was taken all the same.
create table implausible_link (
    plant      text        not null,
    lot        text        not null,
    ordinal    int         not null check (ordinal >= 0),
    parent     text,
    message    text        not null,
    registered timestamptz not null,
    primary key (plant, lot, ordinal),
    foreign key (plant, lot) references lot (plant, id)
);

create index implausible_link_newest on implausible_link (registered desc, plant);

-- Where a reel went: the latest entry counts.
create table reel_disposition (
    plant     text        not null,
    id        bigint      not null generated always as identity,
    reel      text        not null,
    state     text        not null check (state in ('in-stock', 'shipped', 'scrapped')),
    recipient text,
    reason    text,
    actor     text        not null,
    at        timestamptz not null,
    primary key (plant, id),
    check ((state = 'shipped') = (recipient is not null))
);

create index reel_disposition_latest on reel_disposition (plant, reel, id desc);

-- A queue, no record: a report leaves it for the lot that it becomes, or for refused_report, in one transaction.
create table waiting_report (
    plant         text        not null,
    lot           text        not null,
    report        jsonb       not null,
    source_sha256 text        not null,
    received      timestamptz not null,
    primary key (plant, lot)
);

-- The parents that are not registered yet.
create table waiting_parent (
    plant  text not null,
    parent text not null,
    lot    text not null,
    primary key (parent, plant, lot),
    foreign key (plant, lot) references waiting_report (plant, lot) on delete cascade
);

create index waiting_parent_lot on waiting_parent (lot, plant);

-- Reports that were taken to wait, and turned out wrong when their parents came.
create table refused_report (
    plant         text        not null,
    id            bigint      not null generated always as identity,
    lot           text        not null,
    report        jsonb       not null,
    source_sha256 text        not null,
    received      timestamptz not null,
    refused       timestamptz not null,
    reason        text        not null,
    primary key (plant, id)
);

do
$$
declare
    kept text;
begin
    foreach kept in array array ['step_run', 'lot_sample', 'implausible_link', 'reel_disposition', 'refused_report']
        loop
            execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                           kept || '_is_kept', kept);
            execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                           kept || '_is_kept_whole', kept);
        end loop;
end
$$;
