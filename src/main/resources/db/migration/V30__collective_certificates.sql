-- Certificates that stand for several reels of an order, each by a certificate of its own. They have numbers of the same series as those
-- of single reels, and judge nothing: what one is worth follows from the certificates that it names.

create table collective_certificate (
    plant        text        not null, -- the plant that issues it
    number       text        not null, -- its number; no certificate of a single reel has the same
    order_number text        not null check (order_number <> ''), -- the customer order
    customer     text, -- who ordered; null when not known
    issued       timestamptz not null, -- when it was issued, as its pages say
    names_sha256 text        not null check (names_sha256 ~ '^[0-9a-f]{64}$'), -- digest of the order and of which certificates it names
    content      jsonb       not null, -- what it says
    pdf          bytea       not null, -- its pages, signed
    pdf_sha256   text        not null check (pdf_sha256 ~ '^[0-9a-f]{64}$'), -- digest of the same
    primary key (plant, number),
    constraint collective_certificate_names_others unique (plant, names_sha256)
);

create index collective_certificate_order on collective_certificate (plant, order_number, issued desc);
create index collective_certificate_pdf on collective_certificate (pdf_sha256);

create trigger collective_certificate_is_kept before update or delete on collective_certificate
    for each row execute function refuse_change();
create trigger collective_certificate_is_kept_whole before truncate on collective_certificate
    for each statement execute function refuse_change();

-- Those that have their number and their pages and wait for the signature, as in certificate_to_sign.
create table collective_to_sign (
    plant        text        not null, -- as in collective_certificate
    number       text        not null, -- as in collective_certificate
    issued       timestamptz not null, -- as in collective_certificate
    names_sha256 text        not null, -- as in collective_certificate
    content      jsonb       not null, -- what it says
    pdf          bytea       not null, -- its pages, not yet signed
    primary key (plant, number),
    unique (plant, names_sha256)
);
