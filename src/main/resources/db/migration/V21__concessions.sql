-- What may be done with a reel that its test rejected, or accepted conditionally: asked for by one person, decided by another.

-- Asked for. kind: use-as-is; regrade, to the product named; shorten, to the length named. What the reel was registered as then
-- (from_product, from_length) stands beside it. requirements: the ids of those that did not pass, as a JSON array.
create table concession (
    plant          text        not null,
    id             bigint      not null generated always as identity,
    reel           text        not null,
    record_id      uuid        not null,
    kind           text        not null check (kind in ('use-as-is', 'regrade', 'shorten')),
    requirements   jsonb       not null,
    from_product   text        not null,
    product        text,
    from_length    double precision not null check (from_length > 0),
    from_unit      text        not null,
    length         double precision check (length > 0),
    length_unit    text,
    reason         text        not null check (reason <> ''),
    requested_by   text        not null check (requested_by <> ''),
    requested_role text        not null check (requested_role <> ''),
    requested      timestamptz not null,
    primary key (plant, id),
    foreign key (plant, reel) references reel (plant, id),
    foreign key (plant, product) references product (plant, id),
    constraint concession_and_requester unique (plant, id, requested_by),
    constraint concession_names_what_is_new check (
        (kind = 'regrade') = (product is not null)
            and num_nonnulls(length, length_unit) = case when kind = 'shorten' then 2 else 0 end)
);

create index concession_reel on concession (plant, reel, id desc);

-- Decided, once. The requester stands here again, so that the database itself sees that it is somebody else.
-- new_record: the judgement as another product, where the reel was regraded.
create table concession_decision (
    plant        text        not null,
    concession   bigint      not null,
    requested_by text        not null,
    approved     boolean     not null,
    reason       text        not null check (reason <> ''),
    decided_by   text        not null check (decided_by <> ''),
    decided_role text        not null check (decided_role <> ''),
    decided      timestamptz not null,
    new_record   uuid,
    primary key (plant, concession),
    foreign key (plant, concession, requested_by) references concession (plant, id, requested_by),
    constraint concession_needs_two_persons check (
        lower(normalize(decided_by, NFKC)) <> lower(normalize(requested_by, NFKC))),
    check (approved or new_record is null)
);

-- A record that is no test of its own: that of an earlier upload, judged again as another product. of_record: the record of the upload.
create table judged_again (
    plant     text        not null,
    record_id uuid        not null,
    reel      text        not null,
    of_record uuid        not null,
    received  timestamptz not null,
    primary key (plant, record_id),
    foreign key (plant, of_record) references upload (plant, record_id)
);

create index judged_again_of_record on judged_again (plant, of_record, received desc);
create index judged_again_reel on judged_again (plant, reel);

do
$$
declare
    kept text;
begin
    foreach kept in array array ['concession', 'concession_decision', 'judged_again']
        loop
            execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                           kept || '_is_kept', kept);
            execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                           kept || '_is_kept_whole', kept);
        end loop;
end
$$;
