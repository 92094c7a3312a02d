-- Certificates that have their number and their pages and wait for the signature. The number is taken for good when a row comes in,
-- so that nobody waits for another's signing device; the row goes in the transaction that keeps the signed certificate. What a crash
-- leaves here is signed later: no number is lost.
create table certificate_to_sign (
    plant     text        not null, -- the plant that issues it
    number    text        not null, -- its number
    issue     int         not null check (issue >= 1), -- which issue of the number
    record_id uuid        not null, -- the record that it certifies
    issued    timestamptz not null, -- when it was issued, as its pages say
    content   jsonb       not null, -- what it says
    pdf       bytea       not null, -- its pages, not yet signed
    reissue_reason text check (reissue_reason <> ''), -- why the number is issued again; null for the first issue
    reissued_by    text check (reissued_by <> ''), -- who issues it again
    consignee      text check (consignee <> ''), -- to whom the goods go, where a reissue says it
    constraint certificate_to_sign_reissue_is_whole check (num_nonnulls(reissue_reason, reissued_by) in (0, 2)),
    primary key (plant, number, issue)
);

create index certificate_to_sign_record on certificate_to_sign (plant, record_id);
