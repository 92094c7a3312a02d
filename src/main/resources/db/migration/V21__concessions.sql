-- What may be done with a reel that its test rejected, or accepted conditionally: asked for by one person, decided by another.

-- Asked for.
create table concession (
    plant          text        not null,
    -- Its number, for people.
    id             bigint      not null generated always as identity,
    -- The reel.
    reel           text        not null,
    -- The record that it concedes.
    record_id      uuid        not null,
    -- use-as-is; regrade, to the product named; shorten, to the length named.
    kind           text        not null check (kind in ('use-as-is', 'regrade', 'shorten')),
    -- The ids of the requirements that did not pass, as a JSON array.
    requirements   jsonb       not null,
    -- What the reel was registered as then.
    from_product   text        not null,
    -- Of a regrade: what it becomes.
    product        text,
    -- The length that was registered then, in from_unit.
    from_length    double precision not null check (from_length > 0),
    -- A unit of length.
    from_unit      text        not null,
    -- Of a shortening: the new length, in length_unit.
    length         double precision check (length > 0),
    -- A unit of length.
    length_unit    text,
    -- Why, as the person put it who asked for it.
    reason         text        not null check (reason <> ''),
    -- Who asked for it.
    requested_by   text        not null check (requested_by <> ''),
    -- The role that gave the right to ask.
    requested_role text        not null check (requested_role <> ''),
    -- When it was asked for.
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

-- Decided, once.
create table concession_decision (
    plant        text        not null,
    -- The number of the concession.
    concession   bigint      not null,
    -- Who asked for it: so the database itself sees that somebody else decides.
    requested_by text        not null,
    -- Whether it was approved.
    approved     boolean     not null,
    -- Why so.
    reason       text        not null check (reason <> ''),
    -- Who decided.
    decided_by   text        not null check (decided_by <> ''),
    -- The role that gave the right to decide.
    decided_role text        not null check (decided_role <> ''),
    -- When.
    decided      timestamptz not null,
    -- Of an approved regrade: the judgement as the other product.
    new_record   uuid,
    primary key (plant, concession),
    foreign key (plant, concession, requested_by) references concession (plant, id, requested_by),
    constraint concession_needs_two_persons check (
        lower(normalize(decided_by, NFKC)) <> lower(normalize(requested_by, NFKC))),
    check (approved or new_record is null)
);

-- A record that is no test of its own: that of an earlier upload, judged again as another product.
create table judged_again (
    plant     text        not null,
    -- The record that judges the upload again.
    record_id uuid        not null,
    -- The reel.
    reel      text        not null,
    -- The record that the upload made.
    of_record uuid        not null,
    -- When it was judged again; it leads to the record's partition.
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
