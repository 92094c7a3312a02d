package dev.reelproof.analysis;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * The Benjamini-Hochberg procedure, which bounds the rate of false alarms among everything named: Y. Benjamini and Y. Hochberg,
 * Controlling the false discovery rate, Journal of the Royal Statistical Society B 57 (1995) 289–300; from memory, checked with the
 * example of its section 4.1.
 *
 * <p>Equation: q(i) = min over j ≥ i of m p(j) / j, at most 1; p(1) ≤ … ≤ p(m). Whoever names all with q ≤ level is wrong, on average, in
 * at most that share of what they name. Where nothing has an effect, they name anything at all with at most that chance.
 *
 * <p>Symbols: p the chance of such evidence without an effect, m how many were tested; no units.
 *
 * <p>Range: p from 0 to 1; tests that are independent or positively dependent, as those of lots in the same reels mostly are.
 *
 * <p>Edge cases: equal p get equal q; no tests, no q.
 *
 * <p>Known error: exposures that exclude each other, such as machines that share the work, depend negatively. The bound is not proven for
 * them, though the rate is rarely above the level.
 */
final class FalseDiscovery {
    private FalseDiscovery() {}

    /** The q of each p, in the order given. */
    static double[] adjusted(double... chances) {
        return adjusted(chances, chances.length);
    }

    /**
     * The q of each p, in the order given, where more was tested: the rest is taken to have p = 1.
     *
     * @param m how many were tested, at least as many as are given
     */
    static double[] adjusted(double[] chances, int m) {
        if (!(m >= chances.length)) {
            throw new IllegalArgumentException(chances.length + " chances cannot be of " + m + " tests");
        }
        for (double p : chances) {
            if (!(p >= 0 && p <= 1)) {
                throw new IllegalArgumentException("a chance must be from 0 to 1, not " + p);
            }
        }
        int[] order = IntStream.range(0, chances.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> chances[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] adjusted = new double[chances.length];
        Arrays.fill(adjusted, 1);
        double least = 1;
        for (int rank = chances.length; rank >= 1; rank--) {
            int i = order[rank - 1];
            least = Math.min(least, chances[i] * m / rank);
            adjusted[i] = least;
        }
        return adjusted;
    }
}
