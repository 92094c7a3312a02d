-- Where it is least sure that a requirement is met, with the sum of the doubt in all its values:
-- {"pair": …, "partner": …, "conductor": …, "end": …, "sample": …, "megahertz": …, "value": …, "margin": …, "probability": …, "sum": …}.
-- Null where no uncertainty is known, and in the findings of before. A statistic of a unit of the core, or between two, names them.
alter table finding
    add column doubt jsonb,
    add column core_unit integer check (core_unit >= 1),
    add column other_core_unit integer check (other_core_unit > core_unit);
