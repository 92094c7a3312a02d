-- What must not leave: holds and their releases. Nothing is copied to what descends from a held lot; whether a reel is held is asked
-- from the reel upwards, so that what is registered later is held too.

-- A hold of a reel names it in 'lot', as reels stand among lots. What it names may be registered later: no foreign key.
create table hold (
    plant        text        not null,
    id           bigint      not null generated always as identity,
    what         text        not null check (what in ('lot', 'reel', 'run', 'machine')),
    lot          text,
    run          text,
    machine      text,
    window_from  timestamptz,
    window_to    timestamptz,
    reason       text        not null check (reason <> ''),
    held_by      text        not null check (held_by <> ''),
    held_by_kind text        not null check (held_by_kind in ('person', 'token')),
    held         timestamptz not null,
    primary key (plant, id),
    constraint hold_and_holder unique (plant, id, held_by, held_by_kind),
    constraint hold_names_one_thing check (
        (what in ('lot', 'reel')) = (lot is not null)
            and (what = 'run') = (run is not null)
            and (what = 'machine') = (machine is not null)
            and num_nonnulls(machine, window_from, window_to) in (0, 3)),
    check (window_to >= window_from)
);

-- The plant does not lead: while there are no statistics yet, such an index would look as good as the key for finding one hold.
create index hold_lot on hold (lot, plant) where lot is not null;
create index hold_run on hold (run, plant) where run is not null;
create index hold_machine on hold (machine, plant, window_from, window_to) where machine is not null;

-- Without a range the whole hold ends. The holder stands here again, so that the database itself sees that it is somebody else.
create table hold_release (
    plant        text        not null,
    hold         bigint      not null,
    ordinal      int         not null check (ordinal >= 0),
    range_from   double precision check (range_from >= 0),
    range_to     double precision check (range_to > range_from),
    range_unit   text,
    reason       text        not null check (reason <> ''),
    held_by      text        not null,
    held_by_kind text        not null,
    released_by  text        not null check (released_by <> ''),
    released     timestamptz not null,
    primary key (plant, hold, ordinal),
    foreign key (plant, hold, held_by, held_by_kind) references hold (plant, id, held_by, held_by_kind),
    constraint hold_release_range_is_whole check (num_nonnulls(range_from, range_to, range_unit) in (0, 3)),
    constraint hold_release_needs_two_persons check (
        held_by_kind <> 'person' or lower(normalize(released_by, NFKC)) <> lower(normalize(held_by, NFKC)))
);

-- Finds out at once whether a hold is open, and lets it end once.
create unique index hold_release_whole on hold_release (hold, plant) where range_unit is null;

do
$$
declare
    kept text;
begin
    foreach kept in array array ['hold', 'hold_release']
        loop
            execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                           kept || '_is_kept', kept);
            execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                           kept || '_is_kept_whole', kept);
        end loop;
end
$$;
