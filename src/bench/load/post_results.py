#!/usr/bin/env python3
"""Posts results to a running service and prints how long the answers took. It asserts nothing.

    python3 src/bench/load/post_results.py --token TOKEN [--url http://localhost:8080] [--count 200] [--bays 4]

Each result is one of the demo's documents, sent for a reel of its own that is registered first (the demo's products must be there), with a
station of its own, so that none is taken for one that was sent before. The token is one of a role that may register reels and send results.
A person makes it at /accounts.html or with POST /api/v1/tokens.
"""

import argparse
import json
import pathlib
import statistics
import threading
import time
import urllib.error
import urllib.request
import uuid

PERCENTILES = (50, 90, 95, 99)
DEMO = pathlib.Path(__file__).resolve().parents[3] / "demo-data"


def send(arguments, method, path, body):
    request = urllib.request.Request(
        arguments.url + path,
        data=json.dumps(body).encode("utf-8"),
        method=method,
        headers={"Content-Type": "application/json", "Authorization": "Bearer " + arguments.token},
    )
    with urllib.request.urlopen(request) as answer:
        return answer.status, json.load(answer)


def bay(arguments, documents, numbers, took, faults):
    while True:
        try:
            number = numbers.pop()
        except IndexError:
            return
        document = dict(documents[number % len(documents)], station="load-" + str(uuid.uuid4()))
        reel = "LOAD-" + uuid.uuid4().hex[:12]
        try:
            send(arguments, "PUT", "/api/v1/reels/" + reel, {"product": document["product"], "length": document["length"]})
            began = time.perf_counter()
            send(arguments, "POST", "/api/v1/reels/" + reel + "/tests", document)
            took.append((time.perf_counter() - began) * 1000)
        except urllib.error.HTTPError as fault:
            faults.append(f"{fault.code}: {fault.read().decode('utf-8', 'replace')[:300]}")
        except urllib.error.URLError as fault:
            faults.append(str(fault.reason))


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--url", default="http://localhost:8080")
    parser.add_argument("--token", required=True)
    parser.add_argument("--count", type=int, default=200, help="how many results")
    parser.add_argument("--bays", type=int, default=4, help="how many are sent at once")
    arguments = parser.parse_args()
    reels = json.loads((DEMO / "reels.json").read_text("utf-8"))
    documents = [json.loads((DEMO / reel["result"]).read_text("utf-8")) for reel in reels if not reel.get("csv")]
    numbers, took, faults = list(range(arguments.count)), [], []
    bays = [
        threading.Thread(target=bay, args=(arguments, documents, numbers, took, faults)) for _ in range(arguments.bays)
    ]
    began = time.perf_counter()
    for one in bays:
        one.start()
    for one in bays:
        one.join()
    seconds = time.perf_counter() - began
    print(f"{len(took)} results judged and kept in {seconds:.1f} s by {arguments.bays} bays, {len(faults)} refused")
    for fault in faults[:3]:
        print("  " + fault)
    if len(took) > 1:
        cuts = statistics.quantiles(took, n=100, method="inclusive")
        print("  ".join(f"p{percent} {cuts[percent - 1]:.0f} ms" for percent in PERCENTILES) + f"  most {max(took):.0f} ms")


if __name__ == "__main__":
    main()
