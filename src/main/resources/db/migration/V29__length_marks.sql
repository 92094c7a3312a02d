-- The first and last of the length marks that the jacket of a reel's cable carries; absent together.

alter table reel
    -- The mark at one end, in mark_unit.
    add column first_mark double precision check (first_mark >= 0 and first_mark < 'infinity'),
    -- The mark at the other end, in mark_unit; below or above the first.
    add column last_mark  double precision check (last_mark >= 0 and last_mark < 'infinity'),
    -- The unit of length that the jacket is marked in.
    add column mark_unit  text check (mark_unit <> ''),
    add constraint reel_length_marks_are_whole check (num_nonnulls(first_mark, last_mark, mark_unit) in (0, 3)),
    add constraint reel_lies_between_two_marks check (first_mark <> last_mark);
