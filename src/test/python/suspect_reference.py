"""Makes reference figures for the tests that suspects are ranked by, by another route than the service's.

The chance over strata (Cochran-Mantel-Haenszel, exact) and that of a trend (Cochran-Armitage, exact) are counted one choice after the
other, in whole numbers: every way in which as many reels of each stratum could fail is made, and those that are as extreme are counted.

    /usr/bin/python3 src/test/python/suspect_reference.py src/test/resources/analysis
"""
import random
import sys
from fractions import Fraction
from itertools import combinations, product
from pathlib import Path


def sums(scores, failing):
    """How many choices of so many reels have each sum of scores."""
    ways = {}
    for chosen in combinations(scores, failing):
        ways[sum(chosen)] = ways.get(sum(chosen), 0) + 1
    return ways


def chance(strata):
    """strata: scores of all reels, how many fail, the sum of the failing ones' scores."""
    observed = sum(total for _, _, total in strata)
    counted = [sums(scores, failing) for scores, failing, _ in strata]
    all_ways = extreme = 0
    for choice in product(*(ways.items() for ways in counted)):
        number = 1
        for _, ways in choice:
            number *= ways
        all_ways += number
        if sum(total for total, _ in choice) >= observed:
            extreme += number
    return Fraction(extreme, all_ways)


def tables(draw):
    """Strata of exposed and other reels: a/n c/m; scores are 1 for exposed reels and 0 for others."""
    rows = []
    for _ in range(draw.randint(1, 4)):
        n, m = draw.randint(0, 5), draw.randint(0, 6)
        rows.append((draw.randint(0, n), n, draw.randint(0, m), m))
    strata = [([1] * n + [0] * m, a + c, a) for a, n, c, m in rows]
    return " ".join(f"{a}/{n}:{c}/{m}" for a, n, c, m in rows), chance(strata)


def trends(draw):
    """Strata of scores in percent: failing reels' scores, passing reels' scores."""
    rows = []
    for _ in range(draw.randint(1, 3)):
        grid = draw.choice([[25, 50, 75, 100], [10, 20, 50, 100], [13, 29, 50, 71, 100]])
        failing = [draw.choice(grid) for _ in range(draw.randint(0, 4))]
        passing = [draw.choice(grid) for _ in range(draw.randint(0, 7))]
        rows.append((failing, passing))
    strata = [(f + p, len(f), sum(f)) for f, p in rows]
    return " ".join(f"{','.join(map(str, f))}:{','.join(map(str, p))}" for f, p in rows), chance(strata)


def main(folder):
    draw = random.Random(20261129)
    for name, case in (("strata-exact-computed.csv", tables), ("trend-exact-computed.csv", trends)):
        lines = [f"# Counted by src/test/python/suspect_reference.py in whole numbers, seed 20261129.", "strata;p"]
        lines += [f"{told};{float(p)!r}" for told, p in (case(draw) for _ in range(60))]
        (Path(folder) / name).write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1])
