-- What kept a requirement from being judged, as data: {"named": [{"kind": …, "parts": {…}}], "more": 0}. Null where nothing did, and in the
-- findings of before, which keep their sentence in "reason" alone.
alter table finding add column obstacles jsonb;
