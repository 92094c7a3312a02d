#!/usr/bin/env python3
"""Measures the search over HTTP on what fill_certificates.py filled, and prints percentiles for each kind of question. It asserts nothing.

    python3 src/bench/finding/measure_search.py --token TOKEN [--url http://localhost:8080] [--questions 300] [--certificates 1000000]

Each question is asked once, drawn by a seed, over one connection that stays open; 100 others go before, unmeasured.
"""

import argparse
import http.client
import random
import time
import urllib.parse

PERCENTILES = (50, 90, 99)


def questions(count, drawn):
    def n():
        return drawn.randint(1, count)

    return {
        "reel, whole": lambda: {"q": f"b {n():08d}"},
        "reel, serial alone": lambda: {"q": str(n())},
        "reel, beginning": lambda: {"q": f"B-{n() // 1000:05d}"},
        "certificate, whole": lambda: {"q": f"north2026{1 + n() % 900000:06d}"},
        "certificate, beginning": lambda: {"q": f"NORTH-2026-{n() % 1000:03d}"},
        "what all begin with": lambda: {"q": drawn.choice(["north", "north 2026", "b", "so", "2", "invented"])},
        "order": lambda: {"q": f"so {100000 + n() // 20}"},
        "customer": lambda: {"q": f"invented customer {n() % 500}"},
        "customer, within days": lambda: {"q": f"customer {n() % 500}", "from": "2026-03-01", "to": "2026-03-31"},
        "all, within a day": lambda: {"q": "north", "from": f"2026-0{drawn.randint(1, 9)}-11", "to": "2026-09-12"},
        "nothing there": lambda: {"q": f"zz{n()}"},
    }


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--token", required=True)
    parser.add_argument("--url", default="http://localhost:8080")
    parser.add_argument("--questions", type=int, default=300)
    parser.add_argument("--certificates", type=int, default=1_000_000)
    arguments = parser.parse_args()
    service = http.client.HTTPConnection(urllib.parse.urlsplit(arguments.url).netloc)

    def ask(parameters):
        start = time.perf_counter()
        service.request("GET", "/api/v1/search?" + urllib.parse.urlencode(parameters),
                        headers={"Authorization": f"Bearer {arguments.token}"})
        answer = service.getresponse()
        body = answer.read()
        taken = 1000 * (time.perf_counter() - start)
        if answer.status != 200:
            raise SystemExit(f"{parameters}: {answer.status} {body[:300]}")
        return taken

    kinds = questions(arguments.certificates, random.Random(12))
    for _ in range(100):
        for question in kinds.values():
            ask(question())
    print(f"{'ms':26}" + "".join(f"{'p' + str(p):>9}" for p in PERCENTILES))
    everything = []
    for name, question in kinds.items():
        taken = sorted(ask(question()) for _ in range(arguments.questions))
        everything += taken
        print(f"{name:26}" + "".join(f"{taken[min(len(taken) - 1, len(taken) * p // 100)]:9.1f}" for p in PERCENTILES))
    everything.sort()
    print(f"{'all':26}" + "".join(f"{everything[min(len(everything) - 1, len(everything) * p // 100)]:9.1f}" for p in PERCENTILES))


if __name__ == "__main__":
    main()
