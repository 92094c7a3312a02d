package dev.reelproof.network;

import dev.reelproof.measurement.NetworkTerms;
import java.util.Arrays;
import java.util.List;

/**
 * Source: Bockelman and Eisenstadt, Combined Differential and Common-Mode Scattering Parameters, IEEE T-MTT 43(7), 1995: the
 * definition of the modes read in a public secondary text, the matrix calculated from it.
 *
 * <ul>
 *   <li>Equation: Smm = M S Mᵀ (1); for each pair at an end with ports a and b M has the rows d = (a − b)/√2 and c = (a + b)/√2
 *       (2), from Vd = Va − Vb, Id = (Ia − Ib)/2, Vc = (Va + Vb)/2, Ic = Ia + Ib
 *   <li>Symbols: S single-ended scattering matrix, all ports to z; Smm that of the modes, the differential modes first, then
 *       the common ones, to 2z and z/2 (no unit; z in ohm)
 *   <li>Range: equal real references z, to which {@link Renormalisation} brings the ports before; afterwards it brings the common
 *       modes to their reference where that is not a quarter of the differential one
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

    private final List<PortMap.ModePort> modePorts;
    private final double[] single;
    private final double[] formed;
    private final double[] wanted;

    MixedMode(PortMap map, NetworkTerms terms) {
        this.modePorts = map.modePorts();
        int pairs = modePorts.size();
        double portOhm = terms.differentialOhm() / DIFFERENTIAL_PER_PORT;
        this.single = new double[2 * pairs];
        Arrays.fill(single, portOhm);
        this.formed = new double[2 * pairs];
        Arrays.fill(formed, 0, pairs, terms.differentialOhm());
        Arrays.fill(formed, pairs, 2 * pairs, portOhm * COMMON_PER_PORT);
        this.wanted = formed.clone();
        Arrays.fill(wanted, pairs, 2 * pairs, terms.commonOhm());
    }

    /** The reference that the single-ended ports are brought to first, in ohm. */
    double portOhm() {
        return single[0];
    }

    /** The index of the differential mode of a pair at an end. */
    int differential(int modePort) {
        return modePort;
    }

    /** The index of its common mode. */
    int common(int modePort) {
        return modePorts.size() + modePort;
    }

    /**
     * The matrix of the modes, to the references of the terms.
     *
     * @param s the single-ended matrix in the order of the file; used up
     * @param referenceOhm the reference of each port of the file, ohm
     */
    ComplexMatrix of(ComplexMatrix s, double[] referenceOhm) {
        ComplexMatrix equal = Renormalisation.apply(s, referenceOhm, single);
        int pairs = modePorts.size();
        ComplexMatrix modes = new ComplexMatrix(2 * pairs);
        for (int i = 0; i < pairs; i++) {
            int ai = modePorts.get(i).a() - 1;
            int bi = modePorts.get(i).b() - 1;
            for (int j = 0; j < pairs; j++) {
                int aj = modePorts.get(j).a() - 1;
                int bj = modePorts.get(j).b() - 1;
                form(modes, equal, new int[] {i, j}, new int[] {ai, bi, aj, bj}, -1, -1);
                form(modes, equal, new int[] {i, common(j)}, new int[] {ai, bi, aj, bj}, -1, 1);
                form(modes, equal, new int[] {common(i), j}, new int[] {ai, bi, aj, bj}, 1, -1);
                form(modes, equal, new int[] {common(i), common(j)}, new int[] {ai, bi, aj, bj}, 1, 1);
            }
        }
        return Renormalisation.apply(modes, formed, wanted);
    }

    /** One entry of (1): half of Saa ± Sba ± Sab ± Sbb, with the signs of the b ports in (2). */
    private static void form(ComplexMatrix modes, ComplexMatrix s, int[] place, int[] ports, int signOut, int signIn) {
        int ai = ports[0];
        int bi = ports[1];
        int aj = ports[2];
        int bj = ports[3];
        modes.set(
                place[0],
                place[1],
                (s.re(ai, aj) + signIn * s.re(ai, bj) + signOut * s.re(bi, aj) + signOut * signIn * s.re(bi, bj)) / 2,
                (s.im(ai, aj) + signIn * s.im(ai, bj) + signOut * s.im(bi, aj) + signOut * signIn * s.im(bi, bj)) / 2);
    }
}
