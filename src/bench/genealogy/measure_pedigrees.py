#!/usr/bin/env python3
"""Measures pedigrees over HTTP beside the same by a plain SQL client, and prints percentiles and ratios. It asserts nothing.

    python3 src/bench/genealogy/measure_pedigrees.py --database postgresql://owner@localhost:5432/reelproof --token TOKEN \\
        [--url http://localhost:8080] [--reels 500] [--process PID]

The service runs on a database that fill_plant.py filled. Each reel, drawn by a seed, is asked for over HTTP and in a psql session that
stays open, in turn the one and the other first; psql's time is its own (\\timing: sent, found, received, but not printed). Beside the ratio
stands one without what any answer over HTTP takes (GET /api/v1/session: who calls is looked up, no more), and one against a psql that is
started for the question, as a person at a shell would. psql's statements are written by hand and answer what the service does: each search
one look into an index, for the lots with what is doubtful in them, the links and, below a lot, the reels by where they are; but they
count no depths. With --process the service's memory is printed as well (Linux).
"""

import argparse
import os
import random
import socket
import subprocess
import time
import urllib.parse

PERCENTILES = (10, 50, 90, 99)
FAMILIES = 1_000  # as fill_plant.py has them
CHUNK = 1 << 16
LAST_CHUNK = b"\r\n0\r\n\r\n"

FIND = """
with recursive relative(id) as (
    select $2::text
    union
    select i.{to} from relative r
    cross join lateral (select {to} from lot_input where plant = $1 and {by} = r.id offset 0) i),
member as materialized (
    select l.* from relative r
    cross join lateral (select id, kind, quantity_value, quantity_unit, made, step, machine, run
                        from lot where plant = $1 and id = r.id offset 0) l)
select 1, m.id, m.kind, m.quantity_value, m.quantity_unit, m.made, m.step, m.machine, m.run,
       null::float8, null::float8, null, null::float8, null::float8, null, f.parents, f.messages
from member m left join lateral (
    select array_agg(parent order by ordinal) as parents, array_agg(message order by ordinal) as messages
    from implausible_link where plant = $1 and lot = m.id group by lot) f on true
union all
select 2, i.parent, i.child, i.quantity_value, i.quantity_unit, null, null, null, null,
       i.position_from, i.position_to, i.position_unit, i.onto_from, i.onto_to, i.onto_unit, null, null
from member m cross join lateral (
    select parent, child, quantity_value, quantity_unit, position_from, position_to, position_unit, onto_from, onto_to, onto_unit
    from lot_input where plant = $1 and {by} = m.id offset 0) i"""
REELS = """
union all
select 3, r.id, r.order_number, null, r.customer, r.at, r.state, r.recipient, r.reason, null, null, r.actor, null, null, null, null, null from (
    select m.id, e.order_number, e.customer, d.at, d.state, d.recipient, d.reason, d.actor from member m
    left join lateral (select order_number, customer from reel where plant = $1 and id = m.id offset 0) e on true
    left join lateral (select state, recipient, reason, actor, at from reel_disposition
                       where plant = $1 and reel = m.id order by id desc limit 1) d on true
    where m.kind = 'reel' order by d.state, d.recipient, m.id) r"""

STATEMENTS = {"up": FIND.format(to="parent", by="child"), "down": FIND.format(to="child", by="parent") + REELS}


class Psql:
    def __init__(self, database):
        self.database = database
        self.process = subprocess.Popen(["psql", "-X", "-q", "-A", "-t", "-v", "ON_ERROR_STOP=1", "-d", database],
                                        stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1)
        self.tell("set jit = off;")
        for direction, statement in STATEMENTS.items():
            self.tell(f"prepare {direction}(text, text) as {statement};")
        self.tell("\\o /dev/null")
        self.tell("\\timing on")

    def tell(self, line):
        self.process.stdin.write(line + "\n")
        self.process.stdin.flush()

    def took(self, direction, lot):
        """Milliseconds, by psql's own clock."""
        self.tell(f"execute {direction}('north', '{lot}');")
        while True:
            line = self.process.stdout.readline()
            if not line:
                raise SystemExit("psql ended")
            if line.startswith("Time: "):
                return float(line.split()[1])

    def started(self, direction, lot):
        """Milliseconds of a psql that is started for this one question and prints to a file."""
        statement = STATEMENTS[direction].replace("$1", "'north'").replace("$2", f"'{lot}'")
        began = time.perf_counter()
        subprocess.run(["psql", "-X", "-q", "-A", "-t", "-d", self.database, "-o", "/dev/null", "-c", "set jit = off",
                        "-c", statement], check=True)
        return (time.perf_counter() - began) * 1000


class Service:
    """HTTP by a bare socket: a client library would add its own time to the service's."""

    def __init__(self, arguments):
        address = urllib.parse.urlsplit(arguments.url)
        self.socket = socket.create_connection((address.hostname, address.port or 80))
        self.socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        self.head = f" HTTP/1.1\r\nHost: {address.netloc}\r\nAuthorization: Bearer {arguments.token}\r\n\r\n"

    def took(self, path):
        """Milliseconds to the first byte of the body and to the last, and how many bytes."""
        request = f"GET {path}{self.head}".encode("ascii")
        began = time.perf_counter()
        self.socket.sendall(request)
        answer = b""
        while (end := answer.find(b"\r\n\r\n")) < 0:
            answer += self.receive()
        head, body = answer[:end].decode("latin-1").lower(), answer[end + 4 :]
        while not body:
            body = self.receive()
        first = time.perf_counter() - began
        size = len(body)
        if "\r\ntransfer-encoding: chunked" in head:
            tail = body[-len(LAST_CHUNK) :]
            while tail != LAST_CHUNK:
                chunk = self.receive()
                size += len(chunk)
                tail = (tail + chunk)[-len(LAST_CHUNK) :]
        else:
            stated = int(head.split("\r\ncontent-length:")[1].split("\r\n")[0])
            while size < stated:
                size += len(self.receive())
        whole = time.perf_counter() - began
        if not head.startswith("http/1.1 200 "):
            raise SystemExit(f"{path}: {head.splitlines()[0]}")
        return first * 1000, whole * 1000, size

    def receive(self):
        received = self.socket.recv(CHUNK)
        if not received:
            raise SystemExit("the service closed the connection")
        return received


def percentile(values, percent):
    values = sorted(values)
    return values[min(len(values) - 1, int(len(values) * percent / 100))]


def row(name, values):
    figures = "".join(f"{percentile(values, p):10.2f}" for p in PERCENTILES)
    print(f"{name:<34}{figures}{max(values):10.2f}")


def times(name, values, yardstick):
    ratios = "".join(f"{percentile(values, p) / percentile(yardstick, p):10.2f}" for p in PERCENTILES)
    print(f"{name:<34}{ratios}  times psql")


def memory(process):
    if process is None:
        return ""
    with open(f"/proc/{process}/status", encoding="ascii") as status:
        fields = dict(line.split(":", 1) for line in status)
    return f"; the service holds {int(fields['VmRSS'].split()[0]) // 1024} MB, at most {int(fields['VmHWM'].split()[0]) // 1024} MB"


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--database", required=True)
    parser.add_argument("--token", required=True)
    parser.add_argument("--url", default="http://localhost:8080")
    parser.add_argument("--blocks", type=int, default=357, help="as given to fill_plant.py")
    parser.add_argument("--reels", type=int, default=500, help="how many reels are asked for")
    parser.add_argument("--warm", type=int, default=5_000, help="how many are asked for before, without counting")
    parser.add_argument("--long", default="SK0-0030,FO0-0005", help="lots with many descendants")
    parser.add_argument("--repeat", type=int, default=9, help="how often each of those is asked for")
    parser.add_argument("--process", type=int, help="the process of the service")
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()

    psql = Psql(arguments.database)
    service = Service(arguments)
    random.seed(arguments.seed)

    def draw():
        return f"R-{random.randrange(arguments.blocks * FAMILIES):07d}-1"

    kinds = {"ancestors": ("up", "/api/v1/reels/{}/ancestors"), "descendants": ("down", "/api/v1/lots/{}/descendants")}
    print(f"load average {os.getloadavg()}, seed {arguments.seed}")
    print(f"{'ms':<34}" + "".join(f"{'p' + str(p):>10}" for p in PERCENTILES) + f"{'most':>10}")
    for kind, (direction, path) in kinds.items():
        by_http, by_sql, by_nothing, by_started = [], [], [], []
        for n in range(arguments.warm + arguments.reels):
            lot = draw()
            if n % 2:
                sql = psql.took(direction, lot)
            _, whole, _ = service.took(path.format(lot))
            if not n % 2:
                sql = psql.took(direction, lot)
            _, nothing, _ = service.took("/api/v1/session")
            if n >= arguments.warm:
                by_nothing.append(nothing)
                by_http.append(whole)
                by_sql.append(sql)
                if n % 10 == 0:
                    by_started.append(psql.started(direction, lot))
        row(f"{kind} of a reel, HTTP", by_http)
        row(f"{kind} of a reel, psql", by_sql)
        row("any answer, HTTP", by_nothing)
        row("psql started for it", by_started)
        times("", by_http, by_sql)
        # Pair by pair: the quantiles of a difference are not the differences of quantiles.
        times("without what any answer takes", [whole - nothing for whole, nothing in zip(by_http, by_nothing)], by_sql)
        times("beside psql started for it", by_http, by_started)
    for lot in arguments.long.split(","):
        first, whole, by_sql = [], [], []
        for n in range(arguments.repeat):
            if n % 2:
                by_sql.append(psql.took("down", lot))
            begun, ended, size = service.took(kinds["descendants"][1].format(lot))
            first.append(begun)
            whole.append(ended)
            if not n % 2:
                by_sql.append(psql.took("down", lot))
        print(f"descendants of {lot}, {size / 1e6:.1f} MB{memory(arguments.process)}")
        row("  first byte, HTTP", first)
        row("  whole, HTTP", whole)
        row("  whole, psql", by_sql)
        times("", whole, by_sql)
    print(f"load average {os.getloadavg()}")


if __name__ == "__main__":
    main()
