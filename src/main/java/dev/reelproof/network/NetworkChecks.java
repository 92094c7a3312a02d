package dev.reelproof.network;

import java.util.ArrayList;
import java.util.List;

/**
 * Source: conservation of energy and the reciprocity theorem, textbook (from memory); the tolerances are common practice, no
 * source.
 *
 * <ul>
 *   <li>Equation: passive when (1 + t)² I − Sᴴ S is positive definite (1), tried by its Cholesky factors; reciprocal when |Sij
 *       − Sji| ≤ 0.0003 + 0.05 max(|Sij|, |Sji|) for all ports (2)
 *   <li>Symbols: S scattering matrix to real references (no unit); t = 0.01, what noise and calibration leave of a passive
 *       network's amplitude; 0.0003 is some −70 dB, 0.05 some 0.4 dB
 *   <li>Range: real references; edge cases: a lossless network is on the border and passive within t
 *   <li>Known error: none; a network that gains in one mode and loses in another is found all the same, as no look at single
 *       entries would
 * </ul>
 */
final class NetworkChecks {
    private static final double GAIN_ALLOWED = 0.01;
    private static final double DIFFERENCE_ALLOWED = 0.0003;
    private static final double SHARE_ALLOWED = 0.05;

    private NetworkChecks() {}

    /** What is doubtful in the data, as sentences; empty when nothing is. */
    static List<String> warnings(NetworkData data) {
        int active = 0;
        int firstActive = 0;
        int oneWay = 0;
        int firstOneWay = 0;
        String firstEntries = "";
        for (int i = data.size() - 1; i >= 0; i--) {
            ComplexMatrix s = data.matrix(i);
            if (!isPassive(s)) {
                active++;
                firstActive = i;
            }
            String entries = oneWayEntries(s);
            if (!entries.isEmpty()) {
                oneWay++;
                firstOneWay = i;
                firstEntries = entries;
            }
        }
        List<String> warnings = new ArrayList<>();
        if (active > 0) {
            warnings.add("The network of " + data.file() + " is not passive " + place(data, active, firstActive)
                    + ": more comes out than goes in, by more than " + GAIN_ALLOWED
                    + " of the amplitude. Check the calibration of the analyser; the data were used as they are.");
        }
        if (oneWay > 0) {
            warnings.add(
                    "The network of " + data.file() + " is not reciprocal " + place(data, oneWay, firstOneWay) + ": "
                            + firstEntries + " differ by more than " + DIFFERENCE_ALLOWED + " and " + SHARE_ALLOWED
                            + " of the larger. Check the calibration and the order of the ports; the data were used as they are.");
        }
        return warnings;
    }

    private static String place(NetworkData data, int count, int first) {
        return "at " + count + " of " + data.size() + " frequencies, first at " + data.file() + ":" + data.line(first)
                + " (" + data.megahertz(first) + " MHz)";
    }

    static boolean isPassive(ComplexMatrix s) {
        int n = s.size();
        ComplexMatrix left = new ComplexMatrix(n);
        double most = (1 + GAIN_ALLOWED) * (1 + GAIN_ALLOWED);
        for (int row = 0; row < n; row++) {
            for (int column = 0; column <= row; column++) {
                double re = row == column ? most : 0;
                double im = 0;
                for (int k = 0; k < n; k++) {
                    re -= s.re(k, row) * s.re(k, column) + s.im(k, row) * s.im(k, column);
                    im -= s.re(k, row) * s.im(k, column) - s.im(k, row) * s.re(k, column);
                }
                left.set(row, column, re, im);
            }
        }
        return isPositiveDefinite(left); // (1)
    }

    /** By the pivots of Cholesky's factors, from the lower triangle, which is used up. */
    private static boolean isPositiveDefinite(ComplexMatrix hermitian) {
        int n = hermitian.size();
        for (int k = 0; k < n; k++) {
            double pivot = hermitian.re(k, k);
            if (!(pivot > 0)) {
                return false;
            }
            for (int column = k + 1; column < n; column++) {
                double re = hermitian.re(column, k) / pivot;
                double im = -hermitian.im(column, k) / pivot;
                for (int row = column; row < n; row++) {
                    double byRe = hermitian.re(row, k);
                    double byIm = hermitian.im(row, k);
                    hermitian.set(
                            row,
                            column,
                            hermitian.re(row, column) - (byRe * re - byIm * im),
                            hermitian.im(row, column) - (byRe * im + byIm * re));
                }
            }
        }
        return true;
    }

    /** The first two entries that reciprocity would make equal and that are not; empty when there are none. */
    static String oneWayEntries(ComplexMatrix s) {
        for (int row = 0; row < s.size(); row++) {
            for (int column = row + 1; column < s.size(); column++) {
                double difference =
                        StrictMath.hypot(s.re(row, column) - s.re(column, row), s.im(row, column) - s.im(column, row));
                double larger = Math.max(s.abs(row, column), s.abs(column, row));
                if (!(difference <= DIFFERENCE_ALLOWED + SHARE_ALLOWED * larger)) { // (2)
                    return "S" + (row + 1) + "," + (column + 1) + " and S" + (column + 1) + "," + (row + 1);
                }
            }
        }
        return "";
    }
}
