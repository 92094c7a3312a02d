-- Tests of a reel are in the order in which they were done, not in that of arrival.

-- When it was tested, by which the tests of a reel are in order: its end, or its receipt where the bay's clock was fast.
alter table upload add column tested timestamptz;

-- What was taken before has its time in its record. The column is filled once, by the owner; afterwards it is kept like the others.
alter table upload disable trigger upload_is_kept;
update upload u
set tested = least(t.finished, t.received)
from test_record t
where t.plant = u.plant and t.id = u.record_id and t.received = u.received;
alter table upload enable trigger upload_is_kept;

alter table upload alter column tested set not null;

-- The newest test of a reel, and all in order.
create index upload_in_order on upload (plant, reel, tested, attempt);

-- Why a reel was tested again, where it was said.
alter table test_record add column retest_reason text check (retest_reason <> '');

-- What holds where the configuration says nothing, settled when the installation began: what was asked of nobody before an installation
-- was updated is not asked of it afterwards. No plant writes it.
create table installation_default (
    -- The setting, such as reel-required.
    name  text    not null primary key,
    -- What holds.
    value boolean not null
);

-- An installation that has taken no result yet is a new one.
insert into installation_default (name, value)
select name, not exists (select from upload)
from unnest(array ['reel-required', 'retest-reason-required']) as name;

create trigger installation_default_is_kept before update or delete on installation_default
    for each row execute function refuse_change();
create trigger installation_default_is_kept_whole before truncate on installation_default
    for each statement execute function refuse_change();
