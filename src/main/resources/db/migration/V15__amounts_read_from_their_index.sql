-- What all children took of a parent is summed whenever another one is reported, and a compound may have a hundred thousand of them:
-- their amounts must not be fetched from all over the table. The links of an answer are still read from the same index.
drop index lot_input_parent;
create index lot_input_parent on lot_input (plant, parent, child)
    include (amount_base, quantity_value, quantity_unit, position_from, position_to, position_unit, onto_from, onto_to, onto_unit);
