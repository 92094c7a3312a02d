package dev.reelproof.analysis;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * The rate of false alarms among all that is named: Y. Benjamini and Y. Hochberg, Controlling the false discovery rate, Journal of
 * the Royal Statistical Society B 57 (1995) 289–300; from memory, checked with the example of its section 4.1.
 *
 * <p>Equation: q(i) = min over j ≥ i of m p(j) / j, at most 1; p(1) ≤ … ≤ p(m). Who names all with q ≤ level is wrong in at most that
 * share of what is named, on the average; where nothing is at work, names anything at all with at most that chance.
 *
 * <p>Symbols: p chances without effect, m how many were tested; no units.
 *
 * <p>Range: p from 0 to 1; tests independent or positively dependent, as those of lots that went into the same reels mostly are.
 *
 * <p>Edge cases: equal p share a q; without tests there is nothing.
 *
 * <p>Known error: exposures that shut each other out, such as machines that share the work, depend negatively; the rate then is not
 * proven, though it rarely is above the level.
 */
final class FalseDiscovery {
    private FalseDiscovery() {}

    /** The q of each p, in the order given. */
    static double[] adjusted(double... chances) {
        for (double p : chances) {
            if (!(p >= 0 && p <= 1)) {
                throw new IllegalArgumentException("a chance must be from 0 to 1, not " + p);
            }
        }
        int m = chances.length;
        int[] order = IntStream.range(0, m)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> chances[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] adjusted = new double[m];
        Arrays.fill(adjusted, 1);
        double least = 1;
        for (int rank = m; rank >= 1; rank--) {
            int i = order[rank - 1];
            least = Math.min(least, chances[i] * m / rank);
            adjusted[i] = least;
        }
        return adjusted;
    }
}
