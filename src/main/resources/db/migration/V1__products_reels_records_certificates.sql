-- Every row that a plant writes carries its plant in its key: the plant is the unit of distribution.

create extension if not exists pg_trgm;

create table product (
    plant      text        not null,
    id         text        not null,
    definition jsonb       not null,
    registered timestamptz not null,
    primary key (plant, id)
);

create table reel (
    plant        text             not null,
    id           text             not null,
    product      text             not null,
    length_m     double precision not null check (length_m > 0),
    length_sent  double precision not null,
    length_unit  text             not null,
    order_number text,
    customer     text,
    registered   timestamptz      not null,
    searched     text             not null generated always as (
        lower(id || chr(10) || product || chr(10) || coalesce(order_number, '') || chr(10) || coalesce(customer, ''))) stored,
    primary key (plant, id),
    foreign key (plant, product) references product (plant, id)
);

create index reel_searched on reel using gin (searched gin_trgm_ops);

-- A revision of a limit set as it stood when it was first judged by. The same for all plants.
create table limit_set_revision (
    id       text        not null,
    revision int         not null check (revision >= 1),
    sha256   text        not null,
    text     text        not null,
    used     timestamptz not null,
    primary key (id, revision)
);

-- One row an upload: the same bytes for the same reel are one record.
create table upload (
    plant     text        not null,
    reel      text        not null,
    sha256    text        not null,
    record_id uuid        not null,
    attempt   int         not null check (attempt >= 1),
    received  timestamptz not null,
    primary key (plant, reel, sha256),
    unique (plant, reel, attempt),
    unique (plant, record_id),
    foreign key (plant, reel) references reel (plant, id)
);

create index upload_sha256 on upload (plant, sha256);

-- What was uploaded, as received, compressed with gzip.
create table upload_part (
    plant      text  not null,
    record_id  uuid  not null,
    ordinal    int   not null,
    name       text  not null,
    media_type text  not null,
    sha256     text  not null,
    size       int   not null,
    bytes      bytea not null,
    primary key (plant, record_id, ordinal),
    foreign key (plant, record_id) references upload (plant, record_id)
);

-- The time in a record's id (UUID version 7) is its time of receipt, to the millisecond: whoever has the id knows the partition.
create table test_record (
    plant              text             not null,
    id                 uuid             not null,
    received           timestamptz      not null,
    reel               text             not null,
    product            text             not null,
    product_snapshot   jsonb            not null,
    attempt            int              not null,
    limit_set          text             not null,
    limit_set_revision int              not null,
    limit_set_sha256   text             not null,
    engine             text             not null,
    verdict            text             not null check (verdict in ('accepted', 'rejected', 'incomplete')),
    length_m           double precision not null,
    temperature_c      double precision not null,
    station            text,
    technician         text,
    started            timestamptz,
    finished           timestamptz      not null,
    equipment          jsonb            not null,
    warnings           jsonb            not null,
    source_sha256      text             not null,
    primary key (plant, id, received)
) partition by range (received);

create index test_record_reel on test_record (plant, reel, received desc);

-- One row a requirement, so that history and drift never open a block.
create table finding (
    plant         text        not null,
    record_id     uuid        not null,
    received      timestamptz not null,
    ordinal       int         not null,
    requirement   text        not null,
    property      text        not null,
    outcome       text        not null check (outcome in ('pass', 'fail', 'not-tested')),
    reason        text,
    value         double precision,
    judged        double precision,
    limit_value   double precision,
    margin        double precision,
    unit          text,
    megahertz     double precision,
    pair          int,
    partner       int,
    conductor     text,
    cable_end     text,
    sample        int,
    measured      double precision,
    measured_unit text,
    points        int         not null,
    derived       boolean     not null,
    varying_pairs int[]       not null,
    decision_rule text        not null,
    uncertainty   double precision,
    explanation   jsonb       not null,
    primary key (plant, record_id, ordinal, received)
) partition by range (received);

create index finding_property on finding (plant, property, received);

-- All sweeps of a record in one compressed block.
create table sweep_block (
    plant     text        not null,
    record_id uuid        not null,
    received  timestamptz not null,
    block     bytea       not null,
    primary key (plant, record_id, received)
) partition by range (received);

do
$$
declare
    parent text;
    year   int;
begin
    foreach parent in array array ['test_record', 'finding', 'sweep_block']
        loop
            for year in 2025..2040
                loop
                    execute format('create table %I partition of %I for values from (%L) to (%L)',
                                   parent || '_' || year, parent, year || '-01-01 00:00:00+00', year + 1 || '-01-01 00:00:00+00');
                end loop;
            execute format('create table %I partition of %I default', parent || '_other', parent);
        end loop;
end
$$;

create table certificate (
    plant        text        not null,
    number       text        not null,
    issue        int         not null check (issue >= 1),
    record_id    uuid        not null,
    reel         text        not null,
    issued       timestamptz not null,
    order_number text,
    customer     text,
    content      jsonb       not null,
    pdf          bytea       not null,
    pdf_sha256   text        not null,
    searched     text        not null generated always as (
        lower(number || chr(10) || reel || chr(10) || coalesce(order_number, '') || chr(10) || coalesce(customer, ''))) stored,
    primary key (plant, number, issue),
    unique (plant, record_id, issue),
    foreign key (plant, reel) references reel (plant, id)
);

create index certificate_searched on certificate using gin (searched gin_trgm_ops);
create index certificate_reel on certificate (plant, reel);

-- The last serial number given, so that numbers run without a gap.
create table certificate_serial (
    plant text not null,
    year  int  not null,
    last  int  not null,
    primary key (plant, year)
);

-- What was recorded stays as it was recorded.
create function refuse_change() returns trigger
    language plpgsql as
$$
begin
    raise exception '% is a record: it is added to, never changed or removed', tg_table_name
        using errcode = 'restrict_violation';
end
$$;

do
$$
declare
    kept text;
begin
    foreach kept in array array ['test_record', 'finding', 'sweep_block', 'upload', 'upload_part', 'certificate', 'limit_set_revision']
        loop
            execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                           kept || '_is_kept', kept);
            execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                           kept || '_is_kept_whole', kept);
        end loop;
end
$$;
