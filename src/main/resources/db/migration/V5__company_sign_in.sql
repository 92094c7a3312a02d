-- Persons whom the company's identity provider vouches for. One subject keeps one name, and one name means one person: a name
-- that the provider lets its users change would else open another's approvals and write another's name into the audit trail.
create table company_person (
    key          text        not null primary key,
    name         text        not null check (name <> ''),
    display_name text        not null check (display_name <> ''),
    issuer       text        not null,
    subject      text        not null,
    first_seen   timestamptz not null,
    constraint company_person_is_one_subject unique (issuer, subject)
);

-- A session belongs to an account, whose roles are read anew, or to a company's person, with the roles of the sign-in.
alter table web_session alter account drop not null;
alter table web_session add company_person text references company_person (key);
alter table web_session add roles text[];
alter table web_session add constraint web_session_is_one_persons check (
    num_nonnulls(account, company_person) = 1 and (company_person is null) = (roles is null));
alter table web_session add constraint web_session_has_known_roles check (
    roles <@ array ['technician', 'customer-service', 'engineer', 'quality-manager', 'administrator']);
