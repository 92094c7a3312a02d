-- That an engineer accepted a pass after a failure, where the plant's rule on retests asks for it. A failure that comes
-- in later, of an earlier test, asks for another: the latest of a record counts.
create table retest_acceptance (
    plant       text        not null,
    -- In the order in which they were given.
    id          bigint      not null generated always as identity,
    -- The record of the pass.
    record_id   uuid        not null,
    -- Its reel.
    reel        text        not null,
    -- The account of the engineer.
    accepted_by text        not null check (accepted_by <> ''),
    -- When.
    at          timestamptz not null,
    -- Why, as the engineer put it.
    reason      text        not null check (reason <> ''),
    primary key (plant, id),
    foreign key (plant, record_id) references upload (plant, record_id)
);

create index retest_acceptance_record on retest_acceptance (plant, record_id, id);

create trigger retest_acceptance_is_kept before update or delete on retest_acceptance
    for each row execute function refuse_change();
create trigger retest_acceptance_is_kept_whole before truncate on retest_acceptance
    for each statement execute function refuse_change();
