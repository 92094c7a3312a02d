-- Entries of one identifier, whatever its kind: "R-1" finds those of reel/R-1 and lot/R-1.
create index audit_entry_identifier on audit_entry (plant, substr(subject, strpos(subject, '/') + 1), id desc);
