package dev.reelproof.network;

/**
 * Source: Kurokawa, Power Waves and the Scattering Matrix, IEEE T-MTT 13(2), 1965 (from memory), written out for real
 * references.
 *
 * <ul>
 *   <li>Equation: S′ = F (S − R) (I − R S)⁻¹ F⁻¹ (1), R = diag((z′ − z)/(z′ + z)) (2), F = diag((z′ + z)/(2 √(z z′))) (3). It
 *       follows from a = (V + zI)/(2√z), b = (V − zI)/(2√z), which stay V and I of the port whatever z is. No impedance matrix
 *       is formed, which an ideal line does not have at a multiple of half a wavelength
 *   <li>Symbols: S, S′ scattering matrix to the old and to the new references (no unit); z, z′ reference resistance of each
 *       port before and after, in ohm
 *   <li>Range: real positive references, one for each port; power waves and pseudo waves are then the same
 *   <li>Edge cases: equal references leave S as it is; I − R S is singular only for a network that gains power
 *   <li>Known error: that of solving the system, some 1e-14 of the largest entry for a passive network
 * </ul>
 */
final class Renormalisation {
    static final String CITATION =
            "Kurokawa, Power Waves and the Scattering Matrix, IEEE T-MTT 13(2), 1965 (from memory), for real references";

    private Renormalisation() {}

    /**
     * A scattering matrix to new references.
     *
     * @param s the matrix; used up
     * @param from reference of each port before, ohm
     * @param to reference of each port after, ohm
     * @throws ArithmeticException when the network gains so much that there is none
     */
    static ComplexMatrix apply(ComplexMatrix s, double[] from, double[] to) {
        int n = s.size();
        double[] r = new double[n];
        double[] f = new double[n];
        boolean same = true;
        for (int i = 0; i < n; i++) {
            r[i] = (to[i] - from[i]) / (to[i] + from[i]); // (2)
            f[i] = (to[i] + from[i]) / (2 * Math.sqrt(from[i] * to[i])); // (3)
            same &= from[i] == to[i];
        }
        if (same) {
            return s;
        }
        ComplexMatrix divisor = new ComplexMatrix(n);
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                double one = row == column ? 1 : 0;
                divisor.set(row, column, one - r[row] * s.re(row, column), -r[row] * s.im(row, column));
            }
        }
        for (int i = 0; i < n; i++) {
            s.set(i, i, s.re(i, i) - r[i], s.im(i, i));
        }
        ComplexMatrix x = s.over(divisor);
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                double factor = f[row] / f[column];
                x.set(row, column, factor * x.re(row, column), factor * x.im(row, column)); // (1)
            }
        }
        return x;
    }
}
