-- Certificates that somebody asked for, an order at a time. Whichever copy of the service is free issues the next one.

create table certificate_batch (
    plant        text        not null,
    id           bigint      not null generated always as identity,
    order_number text        not null check (order_number <> ''),
    asked        timestamptz not null,
    -- Who asked: certificates are issued in this name and by these roles, also after a restart.
    asked_by      text       not null check (asked_by <> ''),
    asked_by_kind text      not null check (asked_by_kind in ('person', 'token')),
    -- The words of the roles, with commas.
    asked_as     text        not null,
    -- The one plant of who asked; absent when it is every plant.
    asked_at     text,
    -- The network address that the request came from.
    asked_from   text,
    primary key (plant, id)
);

create index certificate_batch_order on certificate_batch (plant, order_number, id desc);

-- A reel of a batch. Who works on it locks its row, so that no other does, and a copy that dies lets it go.
create table certificate_batch_reel (
    plant       text   not null,
    batch       bigint not null,
    -- The place within the batch, from 1.
    ordinal     int    not null check (ordinal >= 1),
    reel        text   not null,
    -- What came of it; absent while it waits.
    outcome     text check (outcome in ('issued', 'issued-before', 'not-issued')),
    -- The number of the certificate, when there is one.
    certificate text,
    -- Why there is none.
    reason      text,
    -- When it was done; absent while it waits.
    done        timestamptz,
    primary key (plant, batch, ordinal),
    foreign key (plant, batch) references certificate_batch (plant, id),
    check (case outcome
               when 'not-issued' then certificate is null and reason is not null and done is not null
               else (outcome is not null) = (certificate is not null) and (outcome is not null) = (done is not null) and reason is null
           end)
);

-- What waits, the oldest first; the plant does not lead, because the next is taken whatever its plant.
create index certificate_batch_waiting on certificate_batch_reel (batch, ordinal, plant) where done is null;

-- Who asked, and by which roles, stays as it was written.
create trigger certificate_batch_is_kept before update or delete on certificate_batch
    for each row execute function refuse_change();
create trigger certificate_batch_is_kept_whole before truncate on certificate_batch
    for each statement execute function refuse_change();
