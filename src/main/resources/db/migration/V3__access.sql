-- Who may come in: accounts, their sessions, tokens of stations and scripts, and the guesses that were wrong.
-- Of every secret only a digest is kept: of passwords a slow one, of random secrets of 256 bits SHA-256.

-- The key is the name with case and forms of characters folded: names that read alike are one account.
create table account (
    key           text        not null primary key,
    name          text        not null check (name <> ''),
    display_name  text        not null check (display_name <> ''),
    password_hash text        not null,
    roles         text[]      not null,
    active        boolean     not null,
    demo          boolean     not null,
    created       timestamptz not null,
    constraint account_has_known_roles check (
        roles <@ array ['technician', 'customer-service', 'engineer', 'quality-manager', 'administrator'])
);

create table web_session (
    secret_sha256 text        not null primary key,
    account       text        not null references account (key),
    csrf          text        not null,
    created       timestamptz not null,
    last_seen     timestamptz not null,
    expires       timestamptz not null,
    ended         timestamptz
);

create index web_session_account on web_session (account);

-- plant: the one plant that it may act at; null for every plant.
create table api_token (
    id            text        not null primary key,
    name          text        not null check (name <> ''),
    secret_sha256 text        not null,
    roles         text[]      not null,
    plant         text,
    demo          boolean     not null,
    created       timestamptz not null,
    expires       timestamptz,
    revoked       timestamptz,
    constraint api_token_has_known_roles check (
        roles <@ array ['technician', 'customer-service', 'engineer', 'quality-manager', 'administrator'])
);

create table set_up_link (
    secret_sha256 text        not null primary key,
    expires       timestamptz not null
);

-- Wrong passwords in a row, by the digest of the folded name: names that nobody has are counted the same way.
create table guessed_name (
    key_sha256 text        not null primary key,
    failures   int         not null,
    last       timestamptz not null,
    closed     timestamptz
);

create index guessed_name_last on guessed_name (last);

create table guessing_address (
    address  text        not null,
    minute   timestamptz not null,
    failures int         not null,
    primary key (address, minute)
);

create index guessing_address_minute on guessing_address (minute);
