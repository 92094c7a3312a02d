-- A revision of a limit set that two persons of a plant found wrong. What the plant certified by it is in question from then on.
create table limit_revision_wrong (
    plant     text        not null,
    -- The set.
    limit_set text        not null,
    -- Its revision.
    revision  int         not null check (revision >= 1),
    -- What is wrong, as the person put it who asked for it.
    reason    text        not null check (reason <> ''),
    -- Who asked for it.
    asked_by  text        not null check (asked_by <> ''),
    -- Who approved it.
    marked_by text        not null check (marked_by <> ''),
    -- When.
    marked    timestamptz not null,
    -- The approval by which it was done.
    approval  bigint      not null,
    primary key (plant, limit_set, revision),
    foreign key (plant, approval) references approval (plant, id),
    constraint limit_revision_wrong_needs_two_persons check (
        lower(normalize(marked_by, NFKC)) <> lower(normalize(asked_by, NFKC)))
);

create trigger limit_revision_wrong_is_kept before update or delete on limit_revision_wrong
    for each row execute function refuse_change();
create trigger limit_revision_wrong_is_kept_whole before truncate on limit_revision_wrong
    for each statement execute function refuse_change();
