-- A certificate's life after its first issue. Its state is worked out from these rows, holds and tests each time; no row keeps it.

alter table certificate
    -- Why a number was issued again; null for the first issue.
    add column reissue_reason text check (reissue_reason <> ''),
    -- The account or token that issued it again.
    add column reissued_by    text check (reissued_by <> ''),
    -- To whom the goods go, where a reissue says it.
    add column consignee      text check (consignee <> ''),
    add constraint certificate_reissue_is_whole check (num_nonnulls(reissue_reason, reissued_by) in (0, 2)),
    add constraint certificate_first_issue_has_no_reason check (issue > 1 or num_nonnulls(reissue_reason, consignee) = 0);

-- A PDF is found by its digest, whatever its name.
create index certificate_pdf on certificate (pdf_sha256);

-- Which certificates a revision of a limit set stands behind.
create index certificate_limits on certificate ((content #>> '{limits,id}'), (content #>> '{limits,revision}'), plant);

-- A certificate that two persons took back, with all its issues.
create table certificate_withdrawal (
    plant        text        not null,
    -- The number that was taken back.
    number       text        not null,
    -- Why, as the person put it who asked for it.
    reason       text        not null check (reason <> ''),
    -- Who asked for it.
    asked_by     text        not null check (asked_by <> ''),
    -- Who approved it.
    withdrawn_by text        not null check (withdrawn_by <> ''),
    -- When.
    withdrawn    timestamptz not null,
    -- The approval by which it was done.
    approval     bigint      not null,
    primary key (plant, number),
    foreign key (plant, approval) references approval (plant, id),
    constraint certificate_withdrawal_needs_two_persons check (
        lower(normalize(withdrawn_by, NFKC)) <> lower(normalize(asked_by, NFKC)))
);

create trigger certificate_withdrawal_is_kept before update or delete on certificate_withdrawal
    for each row execute function refuse_change();
create trigger certificate_withdrawal_is_kept_whole before truncate on certificate_withdrawal
    for each statement execute function refuse_change();
