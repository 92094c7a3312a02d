#!/usr/bin/env python3
"""Fills the tables of a service with the lots of an invented plant: 10 million lots and 30 million inputs. It asserts nothing.

    python3 src/bench/genealogy/fill_plant.py --database postgresql://owner@localhost:5432/reelproof [--blocks 357]

The service must have run on that database before, with REELPROOF_DEMO=true: its migrations made the tables, its demo the products. The
user must be a superuser: while the rows come in, foreign keys, triggers and indexes of the two large tables are away, and made again
afterwards from the words of the catalogue. The schema is dumped before and after; a difference is printed and ends with code 1.

Everything is invented. A block is a few days of the plant: rod is broken down, drawn and annealed, four conductors are insulated from
each annealed one, with two layers of compound and a colour; every second pair has a conductor that ran out; nine cables of ten have four
pairs, one has 25 in five units; each is cut into reels, a few of them from a master reel. Which conductors meet in a cable is scattered over
the block. One lot of skin compound serves 5 blocks (some 123,000 descendants), one of foam compound 21 (some 516,000).
"""

import argparse
import datetime
import hashlib
import shutil
import subprocess
import sys
import time

PLANT = "north"
FAMILIES = 1_000  # cables of a block; every tenth has 25 pairs
SKIN_BLOCKS = 5
FOAM_BLOCKS = 21
COLOUR_BLOCKS = 10
COLOURS = 8
STRIDE = 7_919  # a prime: scatters the conductors of a cable over the block
BEGIN = datetime.datetime(2026, 1, 1, tzinfo=datetime.timezone.utc)
BLOCK_TIME = datetime.timedelta(hours=24)
LARGE = ("lot", "lot_input")
NULL = "\\N"
NO_POSITION = "\t".join([NULL] * 6)


class Plant:
    """Writes the rows of each table to a COPY of its own."""

    COLUMNS = {
        "step_run": "plant, id, step, machine, line, operator, shift, started, finished, settings, registered",
        "lot": "plant, id, kind, quantity_value, quantity_unit, made, step, machine, source_sha256, registered, run",
        "lot_input": "plant, child, parent, ordinal, quantity_value, quantity_unit, amount_base,"
        " position_from, position_to, position_unit, onto_from, onto_to, onto_unit",
        "implausible_link": "plant, lot, ordinal, parent, message, registered",
        "reel": "plant, id, product, length_m, length_sent, length_unit, order_number, customer, registered",
        "reel_disposition": "plant, reel, state, recipient, reason, actor, at",
    }

    def __init__(self, arguments):
        self.copies = {
            table: subprocess.Popen(
                ["psql", "-X", "-q", "-v", "ON_ERROR_STOP=1", "-d", arguments.database, "-c",
                 f"set session_replication_role = replica; copy {table} ({columns}) from stdin"],
                stdin=subprocess.PIPE, stdout=subprocess.DEVNULL, text=False)
            for table, columns in self.COLUMNS.items()
        }
        self.rows = {table: [] for table in self.COLUMNS}
        self.counts = dict.fromkeys(self.COLUMNS, 0)

    def flush(self):
        for table, rows in self.rows.items():
            if rows:
                self.counts[table] += len(rows)
                self.copies[table].stdin.write(("\n".join(rows) + "\n").encode("utf-8"))
                rows.clear()

    def close(self):
        self.flush()
        for table, copy in self.copies.items():
            copy.stdin.close()
            if copy.wait() != 0:
                sys.exit(f"copying into {table} failed")

    def lots(self, ids, kind, quantity, unit, step, machines, made, run=NULL):
        sha256 = hashlib.sha256
        ending = f"\t{made}\t{run}"
        self.rows["lot"] += [
            f"{PLANT}\t{lot}\t{kind}\t{quantity}\t{unit}\t{made}\t{step}\t{machines[n % len(machines)]}\t"
            f"{sha256(lot.encode()).hexdigest()}{ending}"
            for n, lot in enumerate(ids)
        ]

    def block(self, number):
        at = BEGIN + BLOCK_TIME * number
        hours = [(at + datetime.timedelta(hours=h)).isoformat() for h in range(24)]
        link = self.rows["lot_input"].append
        first = number

        def names(prefix, count):
            start = first * count
            return [f"{prefix}-{start + n:08d}" for n in range(count)]

        def machines(prefix, count):
            return [f"{prefix}-{n + 1}" for n in range(count)]

        def material(prefix, kind, each, unit_count=1):
            ids = [f"{prefix}{c}-{number // each:04d}" for c in range(unit_count)]
            if number % each == 0:
                self.lots(ids, kind, 20_000_000, "kg", "compound-receipt", [NULL], hours[0])
            return ids

        skin = material("SK", "insulation-compound", SKIN_BLOCKS)[0]
        foam = material("FO", "insulation-compound", FOAM_BLOCKS)[0]
        colours = material("CO", "colour-concentrate", COLOUR_BLOCKS, COLOURS)
        jacket = material("JC", "jacket-compound", 1)[0]
        filling = material("FI", "filling-compound", 1)[0]
        tape = material("TA", "tape", 1)[0]

        large = range(0, FAMILIES, 10)
        pairs_of = [25 if f % 10 == 0 else 4 for f in range(FAMILIES)]
        pair_count = sum(pairs_of)
        conductors = names("IC", 2 * pair_count)
        annealed = names("AC", len(conductors) // 4)
        breakdown = names("BD", len(annealed) // 10)
        rods = names("ROD", -(-len(breakdown) // 3))

        self.lots(rods, "rod", 4000, "kg", "rod-receipt", [NULL], hours[0])
        self.lots(breakdown, "breakdown-wire", 1300, "kg", "rod-breakdown", machines("RBD", 2), hours[1])
        for n, lot in enumerate(breakdown):
            link(f"{PLANT}\t{lot}\t{rods[n // 3]}\t0\t1305\tkg\t1305\t{NO_POSITION}")
        self.lots(annealed, "annealed-conductor", 48, "km", "drawing", machines("DRW", 6), hours[3])
        for n, lot in enumerate(annealed):
            link(f"{PLANT}\t{lot}\t{breakdown[min(n // 10, len(breakdown) - 1)]}\t0\t120\tkg\t120\t{NO_POSITION}")
        self.lots(conductors, "insulated-conductor", 11.9, "km", "insulating", machines("INS", 8), hours[7])
        for n, lot in enumerate(conductors):
            start = n % 4 * 12_000
            link(f"{PLANT}\t{lot}\t{annealed[n // 4]}\t0\t12\tkm\t12000\t0\t11900\tm\t{start}\t{start + 12000}\tm")
            link(f"{PLANT}\t{lot}\t{foam}\t1\t9.5\tkg\t9.5\t{NO_POSITION}")
            link(f"{PLANT}\t{lot}\t{skin}\t2\t3.1\tkg\t3.1\t{NO_POSITION}")
            link(f"{PLANT}\t{lot}\t{colours[n % COLOURS]}\t3\t0.2\tkg\t0.2\t{NO_POSITION}")

        pairs = names("TP", pair_count)
        self.lots(pairs, "twisted-pair", 11.5, "km", "twisting", machines("TWN", 24), hours[12])
        scattered = [conductors[k * STRIDE % len(conductors)] for k in range(len(conductors))]
        for n, lot in enumerate(pairs):
            link(f"{PLANT}\t{lot}\t{scattered[2 * n]}\t0\t11.7\tkm\t11700\t0\t11500\tm\t0\t11700\tm")
            if n % 2:
                link(f"{PLANT}\t{lot}\t{scattered[2 * n - 1]}\t1\t0.1\tkm\t100\t11400\t11500\tm\t11800\t11900\tm")
                link(f"{PLANT}\t{lot}\t{scattered[2 * n + 1]}\t2\t11.6\tkm\t11600\t0\t11400\tm\t0\t11600\tm")
            else:
                link(f"{PLANT}\t{lot}\t{scattered[2 * n + 1]}\t1\t11.7\tkm\t11700\t0\t11500\tm\t0\t11700\tm")

        units = names("UN", 5 * len(large))
        cores = names("CR", FAMILIES)
        cables = names("JK", FAMILIES)
        self.lots(units, "unit", 11.4, "km", "stranding", machines("STR", 4), hours[15])
        self.lots(cores, "core", 11.3, "km", "cabling", machines("CAB", 6), hours[17])
        self.lots(cables, "jacketed-cable", 11.2, "km", "jacketing", machines("JKT", 4), hours[20])
        pair = unit = reel_number = 0
        for f in range(FAMILIES):
            core, cable = cores[f], cables[f]
            parts = pairs[pair:pair + pairs_of[f]]
            pair += len(parts)
            if len(parts) == 25:
                for u in range(5):
                    for n, part in enumerate(parts[5 * u:5 * u + 5]):
                        link(f"{PLANT}\t{units[unit + u]}\t{part}\t{n}\t11.5\tkm\t11500\t{NO_POSITION}")
                    link(f"{PLANT}\t{units[unit + u]}\t{tape}\t5\t0.5\tkg\t0.5\t{NO_POSITION}")
                parts = units[unit:unit + 5]
                unit += 5
            for n, part in enumerate(parts):
                link(f"{PLANT}\t{core}\t{part}\t{n}\t11.4\tkm\t11400\t{NO_POSITION}")
            link(f"{PLANT}\t{core}\t{filling}\t8\t4\tkg\t4\t{NO_POSITION}")
            link(f"{PLANT}\t{core}\t{tape}\t9\t2\tkg\t2\t{NO_POSITION}")
            link(f"{PLANT}\t{cable}\t{core}\t0\t11.3\tkm\t11300\t{NO_POSITION}")
            link(f"{PLANT}\t{cable}\t{jacket}\t1\t90\tkg\t90\t{NO_POSITION}")
            link(f"{PLANT}\t{cable}\t{colours[f % COLOURS]}\t2\t1\tkg\t1\t{NO_POSITION}")
            link(f"{PLANT}\t{cable}\t{tape}\t3\t0.3\tkg\t0.3\t{NO_POSITION}")
            reels = [f"R-{first * FAMILIES + f:07d}-{n + 1}" for n in range(2 if pairs_of[f] == 25 else 4)]
            run = f"CUT-{first * FAMILIES + f:07d}"
            self.rows["step_run"].append(
                f"{PLANT}\t{run}\tcutting\tCUT-{f % 3 + 1}\t{NULL}\top-{f % 9}\t{NULL}\t{hours[21]}\t{hours[22]}\t{{}}\t{hours[22]}")
            self.lots(reels, "reel", 305, "m", "cutting", [f"CUT-{f % 3 + 1}"], hours[22], run)
            for n, reel in enumerate(reels):
                parent = reels[0] if n and f % 20 == 1 else cable
                link(f"{PLANT}\t{reel}\t{parent}\t0\t305\tm\t305\t0\t305\tm\t{305 * n}\t{305 * n + 305}\tm")
                reel_number += 1
                if reel_number % 2:
                    self.rows["reel"].append(
                        f"{PLANT}\t{reel}\tHD6A-4P\t305\t305\tm\tORDER-{number:04d}-{f // 50}\tCustomer {f % 97} (invented)\t{hours[22]}")
                    if number % 4 and reel_number % 4 == 1:
                        self.rows["reel_disposition"].append(
                            f"{PLANT}\t{reel}\tshipped\tCustomer {f % 97} (invented)\t{NULL}\tfill\t{hours[23]}")
            if f % 100 == 7:
                self.rows["implausible_link"].append(
                    f"{PLANT}\t{cable}\t0\t{core}\tinvented: longer than its core\t{hours[20]}")


def psql(arguments, sql, *options):
    return subprocess.run(
        ["psql", "-X", "-q", "-A", "-t", "-v", "ON_ERROR_STOP=1", "-d", arguments.database, *options],
        input=sql, check=True, text=True, stdout=subprocess.PIPE).stdout


def schema(arguments):
    dump = subprocess.run([arguments.pg_dump, "--schema-only", "-d", arguments.database],
                          check=True, text=True, stdout=subprocess.PIPE).stdout
    return [line for line in dump.splitlines() if not line.startswith(("\\restrict", "\\unrestrict"))]


def taken_away(arguments):
    """What makes the keys and indexes of the large tables again, and what takes them away; in the order in which each is to run."""
    names = ", ".join(f"'{table}'::regclass" for table in LARGE)
    constraints = psql(arguments, f"""
        select contype, conname, conrelid::regclass, pg_get_constraintdef(oid) from pg_constraint
        where contype in ('p', 'u', 'f') and (conrelid in ({names}) or contype = 'f' and confrelid in ({names}))""", "-F", "\t")
    rows = [line.split("\t") for line in constraints.splitlines()]
    rows.sort(key=lambda row: row[0] == "f")
    indexes = psql(arguments, f"""
        select indexrelid::regclass, pg_get_indexdef(indexrelid) from pg_index i
        where indrelid in ({names}) and not exists (select from pg_constraint where conindid = i.indexrelid)""", "-F", "\t")
    index_rows = [line.split("\t") for line in indexes.splitlines()]
    away = [f"alter table {table} drop constraint {name}" for kind, name, table, _ in reversed(rows)]
    away += [f"drop index {name}" for name, _ in index_rows]
    keys = [f"alter table {table} add constraint {name} {words}" for kind, name, table, words in rows if kind != "f"]
    foreign = [f"alter table {table} add constraint {name} {words}" for kind, name, table, words in rows if kind == "f"]
    return away, keys + [words for _, words in index_rows] + foreign


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--database", required=True, help="the address of the database, as psql takes it")
    parser.add_argument("--blocks", type=int, default=357, help="28,057 lots and 84,305 inputs each; 357 make 10 and 30 million")
    parser.add_argument("--pg-dump", default=shutil.which("pg_dump") or "pg_dump")
    arguments = parser.parse_args()

    began = time.monotonic()

    def tell(text):
        print(f"{time.monotonic() - began:7.0f} s  {text}", flush=True)

    before = schema(arguments)
    away, back = taken_away(arguments)
    psql(arguments, ";\n".join(away) + ";")
    plant = Plant(arguments)
    for number in range(arguments.blocks):
        plant.block(number)
        plant.flush()
        if number % 20 == 0:
            tell(f"block {number} of {arguments.blocks}")
    plant.close()
    tell("copied " + ", ".join(f"{count:,} {table}" for table, count in plant.counts.items()))
    for statement in back:
        psql(arguments, f"set maintenance_work_mem = '1GB'; {statement};")
        tell(statement[:100])
    # Pages that are marked as visible to all are what an index alone can answer for; a plant's autovacuum marks them by and by.
    psql(arguments, "".join(f"vacuum analyze {table};\n" for table in Plant.COLUMNS))
    tell("vacuumed and analyzed")
    if schema(arguments) != before:
        sys.exit("the schema is not what the migrations made")
    tell("the schema is what the migrations made")


if __name__ == "__main__":
    main()
