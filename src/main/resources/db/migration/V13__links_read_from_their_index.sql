-- The links below a lot lie all over the table, in the order in which they were reported: a lot with 100,000 descendants would have as
-- many pages to fetch. All that an answer says of a link lies in the index beside its key. (Links above a lot lie together.)
drop index lot_input_parent;
create index lot_input_parent on lot_input (plant, parent, child)
    include (quantity_value, quantity_unit, position_from, position_to, position_unit, onto_from, onto_to, onto_unit);
