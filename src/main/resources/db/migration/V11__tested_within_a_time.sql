-- Which reels were tested within a time: suspects are asked for by the time of test, records are parted by that of receipt.
create index test_record_finished on test_record (plant, finished);
