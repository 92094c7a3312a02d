package dev.reelproof.network;

import dev.reelproof.measurement.NetworkTerms;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/**
 * Source: Bockelman and Eisenstadt, Combined Differential and Common-Mode Scattering Parameters, IEEE T-MTT 43(7), 1995: the
 * definition of the modes read in a public secondary text, the matrix calculated from it.
 *
 * <ul>
 *   <li>Equation: Smm = M S Mᵀ (1); for each pair at an end with ports a and b M has the rows d = (a − b)/√2 and c = (a + b)/√2
 *       (2), from Vd = Va − Vb, Id = (Ia − Ib)/2, Vc = (Va + Vb)/2, Ic = Ia + Ib; a mode that the file has itself is taken as it
 *       is
 *   <li>Symbols: S scattering matrix of the file, conductors to z, differential modes to 2z, common ones to their reference; Smm
 *       that of the modes, the differential modes first, then the common ones (no unit; z in ohm)
 *   <li>Range: real references, to which {@link Renormalisation} brings the ports before; afterwards it brings the common modes
 *       that were formed to their reference where that is not a quarter of the differential one
 *   <li>Edge cases: exchanging a and b turns the sign of the differential mode, which no level shows
 *   <li>Known error: none beyond rounding
 * </ul>
 */
final class MixedMode {
    static final String CITATION =
            "Bockelman and Eisenstadt, Combined Differential and Common-Mode Scattering Parameters, IEEE"
                    + " T-MTT 43(7), 1995 (read in a secondary text)";

    /** A differential mode sees its two ports in series, a common one in parallel. */
    private static final double DIFFERENTIAL_PER_PORT = 2;

    private static final double COMMON_PER_PORT = 0.5;
    private static final int NONE = -1;

    private final List<Mode> modes = new ArrayList<>();
    private final int[] differential;
    private final int[] common;
    private final double portOhm;
    private final double[] ports;
    private final double[] formed;
    private final double[] wanted;

    /** A mode: one row of the file with a sign, or a first row and a second with a sign, over √2. Rows count from 0. */
    private record Mode(int first, int second, int sign) {

        int rows() {
            return second == NONE ? 1 : 2;
        }

        int row(int index) {
            return index == 0 ? first : second;
        }

        int sign(int index) {
            return index == 0 && second != NONE ? 1 : sign;
        }
    }

    /**
     * The modes of a file.
     *
     * @param rows what the rows of its matrix are connected to
     * @param terms the references of the modes
     */
    MixedMode(PortMap rows, NetworkTerms terms) {
        List<ModePort> places = rows.modePorts();
        this.portOhm = terms.differentialOhm() / DIFFERENTIAL_PER_PORT;
        this.differential = new int[places.size()];
        this.common = new int[places.size()];
        int count = places.stream()
                .mapToInt(place -> (place.hasDifferential() ? 1 : 0) + (place.hasCommon() ? 1 : 0))
                .sum();
        this.ports = new double[count];
        this.formed = new double[count];
        this.wanted = new double[count];
        for (int i = 0; i < places.size(); i++) {
            ModePort place = places.get(i);
            boolean single = place.isOfConductors();
            int sign = single || place.reversed() ? -1 : 1;
            differential[i] = add(
                    place.differentialRows(),
                    sign,
                    single ? portOhm : terms.differentialOhm(),
                    terms.differentialOhm(),
                    terms.differentialOhm());
        }
        for (int i = 0; i < places.size(); i++) {
            ModePort place = places.get(i);
            boolean single = place.isOfConductors();
            common[i] = add(
                    place.commonRows(),
                    1,
                    single ? portOhm : terms.commonOhm(),
                    single ? portOhm * COMMON_PER_PORT : terms.commonOhm(),
                    terms.commonOhm());
        }
    }

    /** Adds the mode of some rows and notes the references on the way; gives its index, or {@link #NONE} where there is no row. */
    private int add(List<Integer> rows, int sign, double portReference, double asFormed, double asWanted) {
        if (rows.isEmpty()) {
            return NONE;
        }
        int index = modes.size();
        modes.add(new Mode(rows.get(0) - 1, rows.size() == 1 ? NONE : rows.get(1) - 1, sign));
        rows.forEach(row -> ports[row - 1] = portReference);
        formed[index] = asFormed;
        wanted[index] = asWanted;
        return index;
    }

    /** The reference that conductors are brought to first, in ohm. */
    double portOhm() {
        return portOhm;
    }

    /** A copy of the references that the rows of the file are brought to first, in ohm. */
    double[] rowOhm() {
        return ports.clone();
    }

    /** The index of the differential mode of a pair at an end; empty where the file lacks it. */
    OptionalInt differential(int modePort) {
        return differential[modePort] == NONE ? OptionalInt.empty() : OptionalInt.of(differential[modePort]);
    }

    /** The index of its common mode. */
    OptionalInt common(int modePort) {
        return common[modePort] == NONE ? OptionalInt.empty() : OptionalInt.of(common[modePort]);
    }

    /**
     * The matrix of the modes, to the references of the terms.
     *
     * @param s the matrix in the order of the file; used up
     * @param referenceOhm the reference of each row of the file, ohm
     */
    ComplexMatrix of(ComplexMatrix s, double[] referenceOhm) {
        ComplexMatrix equal = Renormalisation.apply(s, referenceOhm, ports);
        ComplexMatrix result = new ComplexMatrix(modes.size());
        for (int i = 0; i < modes.size(); i++) {
            for (int j = 0; j < modes.size(); j++) {
                form(result, equal, i, j);
            }
        }
        return Arrays.equals(formed, wanted) ? result : Renormalisation.apply(result, formed, wanted);
    }

    /** One entry of (1): the entries of the rows with the signs in (2), over √2 for each mode that is formed of two. */
    private void form(ComplexMatrix result, ComplexMatrix s, int out, int in) {
        Mode to = modes.get(out);
        Mode from = modes.get(in);
        double re = 0;
        double im = 0;
        for (int p = 0; p < to.rows(); p++) {
            for (int q = 0; q < from.rows(); q++) {
                int sign = to.sign(p) * from.sign(q);
                re += sign * s.re(to.row(p), from.row(q));
                im += sign * s.im(to.row(p), from.row(q));
            }
        }
        double divisor = to.rows() == from.rows() ? to.rows() : Math.sqrt(2);
        result.set(out, in, re / divisor, im / divisor);
    }
}
