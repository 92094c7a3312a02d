-- Who did what, when, from where and why; and what one person asked for and another decided.

-- The database gives number and time: the service cannot date an entry back.
create table audit_entry (
    plant        text        not null,
    id           bigint      not null generated always as identity,
    at           timestamptz not null default clock_timestamp(),
    actor        text        not null check (actor <> ''),
    actor_kind   text        not null check (actor_kind in ('person', 'token', 'service', 'none')),
    from_address text,
    action       text        not null check (action <> ''),
    subject      text        not null check (subject <> ''),
    reason       text,
    details      jsonb       not null,
    primary key (plant, id)
);

create index audit_entry_subject on audit_entry (plant, subject, id desc);
create index audit_entry_actor on audit_entry (plant, actor, id desc);
create index audit_entry_action on audit_entry (plant, action, id desc);

create function stamp_audit_entry() returns trigger
    language plpgsql as
$$
begin
    new.at := clock_timestamp();
    return new;
end
$$;

create trigger audit_entry_is_stamped before insert on audit_entry for each row execute function stamp_audit_entry();
create trigger audit_entry_is_kept before update or delete on audit_entry for each row execute function refuse_change();
create trigger audit_entry_is_kept_whole before truncate on audit_entry for each statement execute function refuse_change();

-- Names of one person may differ in case and in the form of their characters; the two are never one person.
create table approval (
    plant           text        not null,
    id              bigint      not null generated always as identity,
    action          text        not null check (action <> ''),
    subject         text        not null check (subject <> ''),
    reason          text        not null check (reason <> ''),
    requested_by    text        not null check (requested_by <> ''),
    requested       timestamptz not null,
    approved        boolean,
    decided_by      text,
    decided         timestamptz,
    decision_reason text,
    primary key (plant, id),
    constraint approval_is_decided_whole check (
        num_nonnulls(approved, decided_by, decided, decision_reason) in (0, 4)),
    constraint approval_needs_two_persons check (
        lower(normalize(decided_by, NFKC)) <> lower(normalize(requested_by, NFKC)))
);

create index approval_open on approval (plant, id desc) where decided is null;

create function decide_once() returns trigger
    language plpgsql as
$$
begin
    if old.decided is not null then
        raise exception 'approval % was decided: a decision is never changed', old.id using errcode = 'restrict_violation';
    end if;
    if (new.plant, new.id, new.action, new.subject, new.reason, new.requested_by, new.requested)
        is distinct from (old.plant, old.id, old.action, old.subject, old.reason, old.requested_by, old.requested) then
        raise exception 'approval %: what was asked for is never changed', old.id using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger approval_is_decided_once before update on approval for each row execute function decide_once();
create trigger approval_is_kept before delete on approval for each row execute function refuse_change();
create trigger approval_is_kept_whole before truncate on approval for each statement execute function refuse_change();
