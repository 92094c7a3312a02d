package dev.reelproof.analysis;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The Mann-Whitney test (rank-sum test), one-sided: do exposed reels have lower margins than others? H. B. Mann and D. R. Whitney, Annals
 * of Mathematical Statistics 18 (1947) 50–60; from memory, checked with worked examples. Over strata: {@link VanElteren}.
 *
 * <p>Equation: U = R − n1(n1 + 1)/2; p = P(U' ≤ U). Exact form: the number of the C(N, n1) choices that give U' is the coefficient of
 * x^U' in the product over i = 1 … n1 of (1 − x^(n2 + i)) / (1 − x^i). Normal form: mean n1 n2 / 2, variance n1 n2 / 12 · [N + 1 −
 * Σ(t³ − t) / (N(N − 1))], with a continuity correction of one half.
 *
 * <p>Symbols: n1 exposed, n2 other, N all reels; R sum of the exposed reels' ranks, the lowest margin first; t reels that share a
 * margin; no units, because only ranks count.
 *
 * <p>Range: margins in one unit. The exact form where no two margins are equal and the work is small; otherwise the normal form.
 *
 * <p>Edge cases: nobody exposed, no others, or all margins equal: p = 1.
 *
 * <p>Known error: the normal form is too cautious in the far tail when few reels are exposed: it may give 1e-3 for a true chance of
 * 1e-7.
 */
final class MannWhitneyTest {
    /** The most steps that the exact form may take; they take less than a millisecond. */
    static final long MOST_EXACT_STEPS = 100_000;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double STEP = 0.5;
    private static final double VARIANCE_DIVISOR = 12;

    private final double[] margins;
    /** The places of the reels that take part, in the order of their margins, lowest first. */
    private final int[] order;
    /** The rank of the reel at each place; 0 for reels that take no part. */
    private final double[] ranks;

    /** Σ(t³ − t) over the groups of equal margins. */
    private final double ties;

    /** Cumulative exact distributions, by the number of exposed or of other reels, whichever is smaller; many suspects share one. */
    private final Map<Integer, double[]> exact = new HashMap<>();

    private MannWhitneyTest(double[] margins, int[] order, double[] ranks) {
        this.margins = margins;
        this.order = order;
        this.ranks = ranks;
        double sum = 0;
        int from = 0;
        while (from < order.length) {
            int to = from + 1;
            while (to < order.length && margins[order[to]] == margins[order[from]]) {
                to++;
            }
            double middle = (from + 1 + to) / 2.0;
            for (int i = from; i < to; i++) {
                ranks[order[i]] = middle;
            }
            double shared = to - from;
            sum += shared * shared * shared - shared;
            from = to;
        }
        this.ties = sum;
    }

    /**
     * The test of these margins, one for each reel.
     *
     * @throws IllegalArgumentException when one is not finite
     */
    static MannWhitneyTest of(double... margins) {
        for (double margin : margins) {
            if (!Double.isFinite(margin)) {
                throw new IllegalArgumentException("a margin must be a finite number, not " + margin);
            }
        }
        return new MannWhitneyTest(
                margins.clone(),
                IntStream.range(0, margins.length)
                        .boxed()
                        .sorted(Comparator.comparingDouble(i -> margins[i]))
                        .mapToInt(Integer::intValue)
                        .toArray(),
                new double[margins.length]);
    }

    /** The test within each stratum. */
    List<MannWhitneyTest> within(Strata strata) {
        int[] sizes = new int[strata.count()];
        for (int reel : order) {
            sizes[strata.of(reel)]++;
        }
        int[][] orders = new int[strata.count()][];
        Arrays.setAll(orders, stratum -> new int[sizes[stratum]]);
        int[] next = new int[strata.count()];
        for (int reel : order) {
            int stratum = strata.of(reel);
            orders[stratum][next[stratum]++] = reel;
        }
        // Each stratum ranks its own reels: no place is written twice.
        double[] shared = new double[margins.length];
        return Arrays.stream(orders)
                .map(own -> new MannWhitneyTest(margins, own, shared))
                .toList();
    }

    /** The chance of ranks as low or lower if the exposure had no effect. */
    double lower(BitSet exposed) {
        return lower(exposed.cardinality(), rankSum(exposed));
    }

    /** The least p that so many exposed reels can reach among these margins; see {@link FisherOneSided#leastAttainable}. */
    double leastAttainable(int exposed) {
        return lower(exposed, lowestRankSum(exposed));
    }

    /** The least sum of ranks that so many reels can have. */
    double lowestRankSum(int exposed) {
        double sum = 0;
        for (int i = 0; i < exposed; i++) {
            sum += ranks[order[i]];
        }
        return sum;
    }

    /** How many reels there are. */
    int reels() {
        return order.length;
    }

    /** The rank of a reel that takes part; the lowest margin has rank 1. */
    double rank(int reel) {
        return ranks[reel];
    }

    /** The share of pairs of an exposed and another reel in which the exposed one has the lower margin; equal ones count half. */
    double shareLower(BitSet exposed) {
        double n1 = exposed.cardinality();
        double n2 = order.length - n1;
        return 1 - (rankSum(exposed) - n1 * (n1 + 1) / 2) / (n1 * n2);
    }

    private double rankSum(BitSet exposed) {
        return exposed.stream().mapToDouble(i -> ranks[i]).sum();
    }

    /** The chance that so many exposed reels have a sum of ranks as low or lower. */
    double lower(int exposed, double rankSum) {
        int others = order.length - exposed;
        double variance = variance(exposed);
        if (!(variance > 0)) {
            return 1;
        }
        double u = rankSum - exposed * (exposed + 1.0) / 2;
        double pairs = (double) exposed * others;
        boolean isLow = u <= pairs / 2;
        double least = isLow ? u : pairs - u - 1;
        int fewer = Math.min(exposed, others);
        if (ties == 0 && fewer * (least + 1) <= MOST_EXACT_STEPS) {
            double tail = least < 0
                    ? 0
                    : exact.computeIfAbsent(fewer, n -> exact(n, order.length - n))[(int) Math.round(least)];
            if (Double.isFinite(tail)) {
                return isLow ? tail : 1 - tail;
            }
        }
        return NORMAL.cumulativeProbability((u - pairs / 2 + STEP) / Math.sqrt(variance));
    }

    /**
     * The chance of at most U, at index U, as far as {@value #MOST_EXACT_STEPS} steps reach or to the middle of the distribution. Not
     * finite where there are more choices than a double can count.
     */
    private static double[] exact(int fewer, int more) {
        double[] ways = new double[(int) Math.min(MOST_EXACT_STEPS / fewer, (long) fewer * more / 2 + 1)];
        ways[0] = 1;
        double choices = 1;
        for (int i = 1; i <= fewer; i++) {
            for (int v = ways.length - 1; v >= more + i; v--) {
                ways[v] -= ways[v - more - i];
            }
            for (int v = i; v < ways.length; v++) {
                ways[v] += ways[v - i];
            }
            choices *= (double) (more + i) / i;
        }
        double[] chances = new double[ways.length];
        double sum = 0;
        double lost = 0; // in rounding, as W. Kahan adds it up
        for (int u = 0; u < ways.length; u++) {
            double next = ways[u] - lost;
            double with = sum + next;
            lost = with - sum - next;
            sum = with;
            chances[u] = Math.min(1, sum / choices);
        }
        return chances;
    }

    /** The variance of the rank sum of so many exposed reels without an effect. */
    double variance(int exposed) {
        double n = order.length;
        double others = n - exposed;
        return n > 1 ? exposed * others / VARIANCE_DIVISOR * (n + 1 - ties / (n * (n - 1))) : 0;
    }
}
