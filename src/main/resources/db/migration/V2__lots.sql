-- Lots and what went into them. A link's ends are lots of one plant, registered before it: descent cannot run in a circle.

create table lot (
    plant          text             not null,
    id             text             not null,
    kind           text             not null,
    quantity_value double precision not null check (quantity_value > 0),
    quantity_unit  text             not null,
    made           timestamptz      not null,
    step           text,
    machine        text,
    source_sha256  text             not null,
    registered     timestamptz      not null,
    primary key (plant, id)
);

-- amount_base is the quantity in metres or kilograms, as the parent is measured: what children take adds up in it.
create table lot_input (
    plant          text             not null,
    child          text             not null,
    parent         text             not null,
    ordinal        int              not null check (ordinal >= 0),
    quantity_value double precision not null check (quantity_value > 0),
    quantity_unit  text             not null,
    amount_base    double precision not null check (amount_base > 0),
    primary key (plant, child, parent),
    check (child <> parent),
    foreign key (plant, child) references lot (plant, id),
    foreign key (plant, parent) references lot (plant, id)
);

create index lot_input_parent on lot_input (plant, parent, child);

do
$$
declare
    kept text;
begin
    foreach kept in array array ['lot', 'lot_input']
        loop
            execute format('create trigger %I before update or delete on %I for each row execute function refuse_change()',
                           kept || '_is_kept', kept);
            execute format('create trigger %I before truncate on %I for each statement execute function refuse_change()',
                           kept || '_is_kept_whole', kept);
        end loop;
end
$$;
