#!/usr/bin/env python3
"""Fills a service's database with a million certificates of an invented plant, one a reel. It asserts nothing.

    python3 src/bench/finding/fill_certificates.py --database postgresql://owner@localhost:5432/reelproof [--certificates 1000000]

The service must have run on that database before, with REELPROOF_DEMO=true, and be stopped: its migrations made the tables, its demo the
products. The user must be a superuser. Search keys are made by the service alone: at its next start it makes them all anew, because this
script takes away the mark that it has. Everything is invented: 20 reels an order, 500 customers, a day's certificates together. The PDF and
what it says are a few bytes: no search reads them.
"""

import argparse
import subprocess

FILL = """
set session_replication_role = replica;
insert into reel (plant, id, product, length_m, length_sent, length_unit, order_number, customer, registered)
select 'north', 'B-' || lpad(n::text, 8, '0'), p.id, 305, 305, 'm', 'SO-' || (100000 + n / 20),
       'Invented Customer ' || (n / 20 % 500), timestamptz '2026-01-01' + n * interval '30 seconds'
from generate_series(1, {count}) as n, (select min(id) as id from product where plant = 'north') p
on conflict do nothing;
insert into certificate (plant, number, issue, record_id, reel, issued, order_number, customer, content, pdf, pdf_sha256)
select plant, 'NORTH-' || (2026 + n / 900000) || '-' || lpad((1 + n % 900000)::text, 6, '0'), 1, gen_random_uuid(), id,
       registered + interval '2 hours', order_number, customer, '{{}}', '', repeat('0', 64)
from (select r.*, substr(id, 3)::int as n from reel r where plant = 'north' and id ~ '^B-[0-9]{{8}}$') r
on conflict do nothing;
-- The service makes the keys anew when the rule's revision is not the one that stands here.
update flyway_schema_history set checksum = 0 where description = 'search keys';
set session_replication_role = origin;
analyze reel; analyze certificate;
"""


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--database", required=True)
    parser.add_argument("--certificates", type=int, default=1_000_000)
    arguments = parser.parse_args()
    subprocess.run(["psql", "-X", "-v", "ON_ERROR_STOP=1", "-d", arguments.database],
                   input=FILL.format(count=arguments.certificates), text=True, check=True)


if __name__ == "__main__":
    main()
