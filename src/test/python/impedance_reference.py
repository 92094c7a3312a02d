#!/usr/bin/python3
"""Writes the lines that the fitted characteristic impedance and the structural return loss are held against, with numpy.

    /usr/bin/python3 src/test/python/impedance_reference.py FOLDER [COMPARE_WITH]

Debian: python3-numpy. A line of resistance, inductance, conductance and capacitance a metre, with skin effect, is known in closed form:
Z0 = sqrt((R + jwL)/(G + jwC)), gamma = sqrt((R + jwL)(G + jwC)). Writes into FOLDER, as differential two-ports to 100 ohm:

uniform-line.s2p    such a line
periodic-line.s2p   the same with its inductance and capacitance modulated along its length by a cosine, so that Z0 varies by a share
                    DEPTH and the velocity stays; made of very many short uniform lines in cascade
impedance.csv       of each: Z0 of the uniform line, the fit of |Zin| and of arg Zin by numpy.linalg.lstsq, and structural return loss,
                    Zin = sqrt(Zoc Zsc) from the chain matrix, not from S
impedance-peak.csv  where the modulation reflects in step and how much, by coupled waves: with kappa = pi DEPTH/(2 period) and the
                    attenuation alpha, reflection (sqrt(alpha^2 + kappa^2) - alpha)/kappa of a long line

With COMPARE_WITH, says whether the files there are the same; exit status 1 when they are not.
"""
import sys
from pathlib import Path

import numpy

MEGAHERTZ = numpy.arange(1.0, 250.01, 0.5)
METRES = 305.0
PEAK_MEGAHERTZ = 120.0
DEPTH = 0.0003
SECTIONS_A_PERIOD = 48
# a metre of a 100 ohm pair: 1.9 dB/100 m at 1 MHz, two thirds of the velocity of light
HENRY = 0.5e-6
FARAD = 50e-12
OHM_AT_DC = 0.14
SKIN_OHM = 0.0428  # at 1 MHz, as resistance and as reactance
LOSS_TANGENT = 0.0005


def parameters(megahertz):
    omega = 2e6 * numpy.pi * megahertz
    skin = SKIN_OHM * numpy.sqrt(megahertz)
    series = OHM_AT_DC + skin + 1j * (omega * HENRY + skin)
    shunt = omega * FARAD * LOSS_TANGENT + 1j * omega * FARAD
    return series, shunt


def chain(z0, gamma, metres):
    matrix = numpy.empty((len(gamma), 2, 2), complex)
    matrix[:, 0, 0] = matrix[:, 1, 1] = numpy.cosh(gamma * metres)
    matrix[:, 0, 1] = z0 * numpy.sinh(gamma * metres)
    matrix[:, 1, 0] = numpy.sinh(gamma * metres) / z0
    return matrix


def scattering(matrix, ohm):
    a, b, c, d = matrix[:, 0, 0], matrix[:, 0, 1] / ohm, matrix[:, 1, 0] * ohm, matrix[:, 1, 1]
    sum_of_all = a + b + c + d
    s = numpy.empty_like(matrix)
    s[:, 0, 0] = (a + b - c - d) / sum_of_all
    s[:, 0, 1] = s[:, 1, 0] = 2 / sum_of_all
    s[:, 1, 1] = (-a + b - c + d) / sum_of_all
    return s


def power(matrix, count):
    result = numpy.broadcast_to(numpy.eye(2, dtype=complex), matrix.shape)
    while count:
        if count & 1:
            result = result @ matrix
        matrix = matrix @ matrix
        count >>= 1
    return result


def fitted(values):
    basis = numpy.array([MEGAHERTZ ** (-n / 2) for n in range(4)]).T
    coefficients = numpy.linalg.lstsq(basis, values, rcond=None)[0]
    return coefficients, basis @ coefficients


def write(folder):
    folder.mkdir(parents=True, exist_ok=True)
    series, shunt = parameters(MEGAHERTZ)
    z0, gamma = numpy.sqrt(series / shunt), numpy.sqrt(series * shunt)
    at_peak = parameters(numpy.array([PEAK_MEGAHERTZ]))
    peak_gamma = numpy.sqrt(at_peak[0] * at_peak[1])[0]
    period = numpy.pi / peak_gamma.imag
    one = numpy.broadcast_to(numpy.eye(2, dtype=complex), (len(MEGAHERTZ), 2, 2))
    for k in range(SECTIONS_A_PERIOD):
        share = 1 + DEPTH * numpy.cos(2 * numpy.pi * (k + 0.5) / SECTIONS_A_PERIOD)
        one = one @ chain(z0 * share, gamma, period / SECTIONS_A_PERIOD)
    lines = {
        "uniform-line": chain(z0, gamma, METRES),
        "periodic-line": power(one, int(METRES / period)),
    }
    rows = [
        "# Made by src/test/python/impedance_reference.py with numpy, not by this program.",
        "line,megahertz,z0Ohm,fittedOhm,fittedRadian,structuralReturnLoss",
    ]
    for name, matrix in lines.items():
        s = scattering(matrix, 100.0)
        text = ["! invented line, seen between its two conductors", "# MHz S RI R 100"]
        for megahertz, one in zip(MEGAHERTZ, s):
            entries = [one[0, 0], one[1, 0], one[0, 1], one[1, 1]]
            text.append(" ".join(["%g" % megahertz] + ["%.12e %.12e" % (e.real, e.imag) for e in entries]))
        (folder / (name + ".s2p")).write_text("\n".join(text) + "\n", encoding="ascii")
        a, b, c, d = matrix[:, 0, 0], matrix[:, 0, 1], matrix[:, 1, 0], matrix[:, 1, 1]
        zin = numpy.sqrt((a / c) * (b / d))
        zin = numpy.where(zin.real < 0, -zin, zin)
        size = fitted(numpy.abs(zin))[1]
        angle = fitted(numpy.angle(zin))[1]
        fit = size * numpy.exp(1j * angle)
        srl = -20 * numpy.log10(numpy.abs((zin - fit) / (zin + fit)))
        for i in range(0, len(MEGAHERTZ), 2):
            rows.append(
                "%s,%g,%.9e,%.9e,%.9e,%.6f" % (name, MEGAHERTZ[i], abs(z0[i]), size[i], angle[i], srl[i])
            )
    (folder / "impedance.csv").write_text("\n".join(rows) + "\n", encoding="ascii")
    kappa, alpha = numpy.pi * DEPTH / (2 * period), peak_gamma.real
    reflection = (numpy.sqrt(alpha**2 + kappa**2) - alpha) / kappa
    (folder / "impedance-peak.csv").write_text(
        "# By coupled waves; see src/test/python/impedance_reference.py.\nmegahertz,structuralReturnLoss\n%g,%.4f\n"
        % (PEAK_MEGAHERTZ, -20 * numpy.log10(reflection)),
        encoding="ascii",
    )
    return ["uniform-line.s2p", "periodic-line.s2p", "impedance.csv", "impedance-peak.csv"]


def compare(written, committed, names):
    """Texts word for word; numbers, since another machine may round the last digits otherwise, to 1e-6 of theirs or of 1e-3."""
    for name in names:
        ours = (committed / name).read_text(encoding="ascii").replace(",", " ").split()
        theirs = (written / name).read_text(encoding="ascii").replace(",", " ").split()
        if len(ours) != len(theirs):
            sys.exit("%s has %d words, numpy gives %d" % (name, len(ours), len(theirs)))
        for one, other in zip(ours, theirs):
            if one != other and not close(one, other):
                sys.exit("%s says %s where numpy gives %s" % (name, one, other))
    print("the committed lines are what numpy gives")


def close(one, other):
    try:
        return abs(float(one) - float(other)) <= 1e-6 * max(1e-3, abs(float(other)))
    except ValueError:
        return False


if __name__ == "__main__":
    made = write(Path(sys.argv[1]))
    if len(sys.argv) > 2:
        compare(Path(sys.argv[1]), Path(sys.argv[2]), made)
