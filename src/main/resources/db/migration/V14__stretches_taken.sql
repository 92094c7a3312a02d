-- Which other lots took of a stretch of a parent must be found without reading all that were made from it. A stretch is kept in the
-- index as a box: along it the places in metres or kilograms, across it the parent. Parents that share a number are told apart after.
-- What has no position (a compound) is not in the index.

-- Metres or kilograms in a unit of a lot, as genealogy.Amount has them.
create function lot_unit(unit text) returns double precision
    language sql immutable parallel safe
    return cast(case unit
                    when 'm' then 1
                    when 'km' then 1000
                    when 'ft' then 0.3048
                    when 'kft' then 304.8
                    when 'mile' then 1609.344
                    when 'kg' then 1
                    when 'g' then 0.001
                    when 't' then 1000
                    when 'lb' then 0.45359237
        end as double precision);

-- The ends may come in either order: a box sorts them.
create function stretch_of(parent text, beginning double precision, ending double precision, unit text) returns box
    language sql immutable parallel safe
    return box(point(beginning * lot_unit(unit), hashtext(parent)), point(ending * lot_unit(unit), hashtext(parent)));

create index lot_input_stretch on lot_input using gist (stretch_of(parent, onto_from, onto_to, onto_unit))
    where onto_unit is not null;
