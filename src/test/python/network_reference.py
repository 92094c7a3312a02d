#!/usr/bin/python3
"""Writes the network reference table with scikit-rf, a general-purpose open-source library of network analysis.

    /usr/bin/python3 src/test/python/network_reference.py FOLDER [COMPARE_WITH]

Debian: python3-scikit-rf. Writes into FOLDER the Touchstone files that NetworkReferenceValidationTest reads and reference.csv, what
scikit-rf makes of them: renormalised (Network.renormalize), taken to mixed mode (Network.se2gmm, ports paired consecutively) and
renormalised again to other references of the common mode. The files named mixed-… hold modes already, in an order that they state; the
figures are those of the single-ended network behind them. balun.s2p holds two differential ports alone. The networks are invented: passive, reciprocal, random from a seed.
With COMPARE_WITH, says whether the files and figures there are the same; exit status 1 when they are not.
"""
import math
import sys
import warnings
from pathlib import Path

import numpy

# scikit-rf 0.15 uses these names, which numpy 1.24 no longer has; they always meant Python's own types.
for gone in (bool, int, float, complex, object):
    if gone.__name__ not in numpy.__dict__:
        setattr(numpy, gone.__name__, gone)

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import skrf

SEED = 20260302
FREQUENCIES_MHZ = [1.0, 3.5, 31.25, 100.0, 500.0]
# The last printed digit is 1e-12 of full scale; what the two differ by in arithmetic is far below the test's tolerance.
DIGITS = "%.12e"


def passive(ports, seed):
    """Random reciprocal matrices, a tenth below the largest singular value that a passive network may have."""
    random = numpy.random.RandomState(seed)
    shape = (len(FREQUENCIES_MHZ), ports, ports)
    s = random.uniform(-1, 1, shape) + 1j * random.uniform(-1, 1, shape)
    s = (s + numpy.transpose(s, (0, 2, 1))) / 2
    largest = numpy.linalg.svd(s, compute_uv=False)[:, :1, None]
    return 0.9 * s / largest


def number_pair(value, form):
    if form == "RI":
        return DIGITS % value.real, DIGITS % value.imag
    size = abs(value)
    angle = DIGITS % math.degrees(math.atan2(value.imag, value.real))
    return (DIGITS % size if form == "MA" else DIGITS % (20 * math.log10(size))), angle


UNITS = {"Hz": 1e6, "kHz": 1e3, "MHz": 1.0, "GHz": 1e-3}


def data_lines(s, form, unit, triangle=None):
    ports = s.shape[1]
    for megahertz, matrix in zip(FREQUENCIES_MHZ, s):
        line = [repr(megahertz * UNITS[unit])]
        for row in range(ports):
            columns = range(ports)
            if triangle == "Lower":
                columns = range(row + 1)
            elif triangle == "Upper":
                columns = range(row, ports)
            for count, column in enumerate(columns):
                if count and count % 4 == 0:
                    yield " ".join(line)
                    line = [" "]
                line.extend(number_pair(matrix[row, column], form))
            yield " ".join(line)
            line = [" "]


def version_one(s, form, unit, ohm):
    return "\n".join(
        ["! invented network for a test", "# %s S %s R %s" % (unit, form, ohm)] + list(data_lines(s, form, unit))
    ) + "\n"


def version_two(s, form, unit, references, triangle, order=None):
    head = [
        "! invented network for a test",
        "[Version] 2.0",
        "# %s S %s R 50" % (unit, form),
        "[Number of Ports] %d" % s.shape[1],
        "[Number of Frequencies] %d" % len(FREQUENCIES_MHZ),
        "[Reference] %s" % " ".join(repr(float(one)) for one in references),
    ]
    if triangle != "Full":  # scikit-rf 0.15 does not know the keyword; Full is meant without it
        head.append("[Matrix Format] %s" % triangle)
    if order:
        head.append("[Mixed-Mode Order] " + order)
    head.append("[Network Data]")
    return "\n".join(head + list(data_lines(s, form, unit, triangle)) + ["[End]"]) + "\n"


def in_order(s, order):
    """The matrix of the rows that an order names: D1,2 is (port 1 - port 2) / sqrt 2, C1,2 their sum over sqrt 2."""
    rows = []
    for entry in order.split():
        row = numpy.zeros(s.shape[1])
        ports = [int(port) - 1 for port in entry[1:].split(",")]
        row[ports[0]] = 1 if entry[0] == "S" else math.sqrt(0.5)
        if entry[0] != "S":
            row[ports[1]] = math.sqrt(0.5) if entry[0] == "C" else -math.sqrt(0.5)
        rows.append(row)
    m = numpy.array(rows)
    return m @ s @ m.T


def mixed_case(order, form, unit, references, triangle="Full"):
    return lambda s: version_two(in_order(s, order), form, unit, references, triangle, order)


def network(s, references):
    frequency = skrf.Frequency.from_f(numpy.array(FREQUENCIES_MHZ) * 1e6, unit="hz")
    return skrf.Network(frequency=frequency, s=s, z0=numpy.tile(references, (len(FREQUENCIES_MHZ), 1)))


def mixed(s, references, common):
    modes = network(s, references)
    modes.renormalize(50)
    pairs = s.shape[1] // 2
    modes.se2gmm(p=pairs)
    wanted = numpy.tile([100.0] * pairs + [common] * pairs, (len(FREQUENCIES_MHZ), 1))
    modes.renormalize(wanted)
    return modes.s


def check_reading(folder, name, s, z0):
    """What scikit-rf itself reads, of the forms that this version of it can."""
    read = skrf.Network(str(folder / name))
    if not numpy.allclose(read.s, s, rtol=0, atol=1e-11):
        sys.exit("scikit-rf reads %s otherwise than it was written" % name)
    if not numpy.allclose(read.f, numpy.array(FREQUENCIES_MHZ) * 1e6, rtol=1e-12):
        sys.exit("scikit-rf reads other frequencies from %s" % name)
    if z0 is not None and not numpy.allclose(read.z0, z0):
        sys.exit("scikit-rf reads other references from %s" % name)


def main():
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    uneven = [50.0, 75.0, 60.0, 45.0, 50.0, 82.5, 100.0, 33.0]
    cases = [
        ("four-port-ri.s4p", 4, [50.0] * 4, 25.0, lambda s: version_one(s, "RI", "MHz", 50)),
        ("four-port-ma.s4p", 4, [75.0] * 4, 50.0, lambda s: version_one(s, "MA", "GHz", 75)),
        ("eight-port-db.s8p", 8, [50.0] * 8, 50.0, lambda s: version_one(s, "DB", "kHz", 50)),
        ("eight-port-full.ts", 8, uneven, 25.0, lambda s: version_two(s, "RI", "Hz", uneven, "Full")),
        ("eight-port-lower.ts", 8, uneven, 37.5, lambda s: version_two(s, "MA", "MHz", uneven, "Lower")),
        ("four-port-upper.ts", 4, uneven[:4], 25.0, lambda s: version_two(s, "DB", "GHz", uneven[:4], "Upper")),
    ]
    eight = [50.0] * 4 + [60.0] * 4
    cases += [
        (
            "mixed-eight.ts",
            8,
            eight,
            25.0,
            mixed_case("D1,2 D3,4 D5,6 D7,8 C1,2 C3,4 C5,6 C7,8", "RI", "MHz", eight),
        ),
        (
            "mixed-shuffled.ts",
            8,
            eight,
            50.0,
            mixed_case("C5,6 D2,1 S3 D8,7 S4 C2,1 D5,6 C8,7", "MA", "GHz", eight, "Lower"),
        ),
        ("mixed-four.ts", 4, [75.0] * 4, 37.5, mixed_case("D1,2 C1,2 D3,4 C3,4", "DB", "kHz", [75.0] * 4)),
    ]
    rows = [
        "# Mixed-mode scattering parameters computed with scikit-rf by src/test/python/network_reference.py, not by this program.",
        "# row, column: modes from 0, the differential modes of the pairs first (100 ohm), then the common ones (commonOhm). Ports are",
        "# paired consecutively.",
        "file,commonOhm,megahertz,row,column,re,im",
    ]
    for index, (name, ports, references, common, text) in enumerate(cases):
        s = passive(ports, SEED + index)
        (folder / name).write_text(text(s), encoding="ascii")
        if name.endswith("p"):
            check_reading(folder, name, s, references[0])
        elif name.startswith("mixed-"):
            pass  # scikit-rf 0.15 does not know the order, and would take the rows for ports
        elif "[Matrix Format]" not in text(s):
            check_reading(folder, name, s, None)
        for megahertz, matrix in zip(FREQUENCIES_MHZ, mixed(s, references, common)):
            for row in range(ports):
                for column in range(ports):
                    value = matrix[row, column]
                    rows.append(
                        "%s,%s,%s,%d,%d,%.11e,%.11e"
                        % (name, common, megahertz, row, column, value.real + 0.0, value.imag + 0.0)
                    )
    balun = passive(2, SEED + len(cases))
    (folder / "balun.s2p").write_text(version_one(numpy.transpose(balun, (0, 2, 1)), "RI", "MHz", 120), encoding="ascii")
    differential = network(balun, [120.0] * 2)
    differential.renormalize(100)
    rows += [
        "balun.s2p,25.0,%s,%d,%d,%.11e,%.11e" % (megahertz, row, column, matrix[row, column].real, matrix[row, column].imag)
        for megahertz, matrix in zip(FREQUENCIES_MHZ, differential.s)
        for row in range(2)
        for column in range(2)
    ]
    (folder / "reference.csv").write_text("\n".join(rows) + "\n", encoding="ascii")
    print("scikit-rf %s, numpy %s: %d figures" % (skrf.__version__, numpy.__version__, len(rows) - 4))
    if len(sys.argv) > 2:
        compare(folder, Path(sys.argv[2]), [case[0] for case in cases] + ["balun.s2p"])


def compare(written, committed, names):
    """Texts must be the same word for word; numbers, since another machine may round the last digit otherwise, to 1e-10 of theirs or of 1."""
    for name in names + ["reference.csv"]:
        ours = (committed / name).read_text(encoding="ascii").replace(",", " ").split()
        theirs = (written / name).read_text(encoding="ascii").replace(",", " ").split()
        if len(ours) != len(theirs):
            sys.exit("%s has %d words, scikit-rf gives %d" % (name, len(ours), len(theirs)))
        for one, other in zip(ours, theirs):
            if one != other and not close(one, other):
                sys.exit("%s says %s where scikit-rf gives %s" % (name, one, other))
    print("the committed reference table is what scikit-rf gives")


def close(one, other):
    try:
        return abs(float(one) - float(other)) <= 1e-10 * max(1.0, abs(float(other)))
    except ValueError:
        return False


if __name__ == "__main__":
    main()
