-- A revision of an uncertainty model as it stood when it was first judged with. The same for all plants.
create table uncertainty_model_revision (
    id       text        not null,
    revision int         not null check (revision >= 1),
    sha256   text        not null,
    text     text        not null,
    used     timestamptz not null,
    primary key (id, revision)
);

create trigger uncertainty_model_revision_is_kept before update or delete on uncertainty_model_revision
    for each row execute function refuse_change();
create trigger uncertainty_model_revision_is_kept_whole before truncate on uncertainty_model_revision
    for each statement execute function refuse_change();

-- Which model gave the uncertainties of a record; null where it had none.
alter table test_record add uncertainty_model text;
alter table test_record add uncertainty_model_revision int;
alter table test_record add uncertainty_model_sha256 text;
alter table test_record add constraint test_record_names_a_model_wholly check (
    num_nonnulls(uncertainty_model, uncertainty_model_revision, uncertainty_model_sha256) in (0, 3));

-- The expanded uncertainty beside its coverage factor; the guard band as a multiple of it, null in findings of before and 0 for
-- simple acceptance.
alter table finding add coverage_factor double precision check (coverage_factor > 0);
alter table finding add probability double precision check (probability between 0 and 1);
alter table finding add guard_multiple double precision check (guard_multiple >= 0);
alter table finding add constraint finding_is_sure_wholly check (num_nonnulls(uncertainty, coverage_factor, probability) in (0, 3));
alter table finding drop constraint finding_outcome_check;
alter table finding add constraint finding_outcome_check check (
    outcome in ('pass', 'conditional-pass', 'conditional-fail', 'fail', 'not-tested'));
