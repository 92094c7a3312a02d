-- The append-only log that makes an edit of what was recorded show: a Merkle tree for each plant (RFC 9162, 2.1).

-- What was written and is not yet in the tree. A row's own transaction adds its line here; the sequencer moves it into seal_leaf.
create table seal_pending (
    -- the plant whose log it goes into
    plant   text        not null,
    -- upload, record, certificate, audit-entry, attachment, note
    kind    text        not null check (kind <> ''),
    -- what identifies it among the plant's leaves of its kind
    id      text        not null check (id <> ''),
    -- one line a row of a table: its name and the SHA-256 of its columns
    parts   text        not null check (parts <> ''),
    -- when, by the database's clock
    written timestamptz not null default clock_timestamp(),
    primary key (plant, kind, id)
);

create index seal_pending_written on seal_pending (plant, written);

-- The leaves, numbered without a gap.
create table seal_leaf (
    -- the plant whose log it is
    plant     text        not null,
    -- its place in the log, from 0
    position  bigint      not null check (position >= 0),
    -- as in seal_pending
    kind      text        not null,
    -- as in seal_pending
    id        text        not null,
    -- as in seal_pending
    parts     text        not null,
    -- SHA-256(0x00 || entry) in hexadecimal
    hash      text        not null check (hash ~ '^[0-9a-f]{64}$'),
    -- when it came into the tree, by the database's clock
    sequenced timestamptz not null default clock_timestamp(),
    primary key (plant, position),
    unique (plant, kind, id)
);

-- The hashes over complete subtrees of two leaves and more, so that a proof need not read all leaves.
create table seal_node (
    -- the plant whose log it is
    plant    text   not null,
    -- it is over 2^level leaves
    level    int    not null check (level >= 1),
    -- its place among the nodes of its level, from 0
    position bigint not null check (position >= 0),
    -- SHA-256(0x01 || left || right) in hexadecimal
    hash     text   not null check (hash ~ '^[0-9a-f]{64}$'),
    primary key (plant, level, position)
);

-- The heads that were signed. They stand in a file outside the database, too.
create table seal_head (
    -- the plant whose log it is
    plant     text        not null,
    -- how many leaves it had
    size      bigint      not null check (size >= 0),
    -- the root over them in hexadecimal
    root      text        not null check (root ~ '^[0-9a-f]{64}$'),
    -- when it was signed, by the service's clock
    at        timestamptz not null,
    -- the SHA-256 of the public key
    key_id    text        not null,
    -- Ed25519 in hexadecimal
    signature text        not null,
    primary key (plant, size)
);

do
$$
declare
    kept text;
begin
    foreach kept in array array ['seal_leaf', 'seal_node', 'seal_head']
        loop
            execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                           kept || '_is_kept', kept);
            execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                           kept || '_is_kept_whole', kept);
        end loop;
end
$$;
