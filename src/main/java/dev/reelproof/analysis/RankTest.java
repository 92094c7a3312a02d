package dev.reelproof.analysis;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The rank-sum test, one-sided: do exposed reels have lower margins than others? H. B. Mann and D. R. Whitney, Annals of Mathematical
 * Statistics 18 (1947) 50–60; over strata P. H. van Elteren, 1960. Both from memory, checked with worked examples.
 *
 * <p>Equation: U = R − n1(n1 + 1)/2; p = P(U' ≤ U). Exact: as many of the C(N, n1) choices have a U' as x^U' has in the product over
 * i = 1 … n1 of (1 − x^(n2 + i)) / (1 − x^i). Else normal: mean n1 n2 / 2, variance n1 n2 / 12 · [N + 1 − Σ(t³ − t) / (N(N − 1))], with
 * half a step of continuity. Over strata: z = Σ w (R − n1(N + 1)/2) / √Σ w² variance, w = 1/(N + 1), ranks within each stratum.
 *
 * <p>Symbols: n1 exposed, n2 other, N all reels; R sum of the exposed reels' ranks, the lowest margin first; t reels that share a
 * margin; no units: ranks alone count.
 *
 * <p>Range: margins in one unit. Exact where no margin is shared and the work is small; normal else.
 *
 * <p>Edge cases: nobody exposed, no others, or all margins equal: p = 1.
 *
 * <p>Known error: the normal form is too careful in the far tail when few reels are exposed: a true chance of 1e-7 may be told as
 * 1e-3.
 */
final class RankTest {
    /** The most steps of the exact form, some milliseconds. */
    static final long MOST_EXACT_STEPS = 1_000_000;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double STEP = 0.5;
    private static final double VARIANCE_DIVISOR = 12;

    private final double[] ranks;
    private final double[] leastRankSums;
    private final double ties;

    private RankTest(double[] ranks, double ties) {
        this.ranks = ranks;
        this.ties = ties;
        double[] sorted = ranks.clone();
        Arrays.sort(sorted);
        Arrays.parallelPrefix(sorted, Double::sum);
        this.leastRankSums = sorted;
    }

    /**
     * The test among these margins, one a reel.
     *
     * @throws IllegalArgumentException when one is not finite
     */
    static RankTest of(double... margins) {
        for (double margin : margins) {
            if (!Double.isFinite(margin)) {
                throw new IllegalArgumentException("a margin must be a finite number, not " + margin);
            }
        }
        int[] order = IntStream.range(0, margins.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> margins[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] ranks = new double[margins.length];
        double ties = 0;
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
            ties += shared * shared * shared - shared;
            from = to;
        }
        return new RankTest(ranks, ties);
    }

    /** The chance of ranks as low or lower, were exposure without effect. */
    double lower(BitSet exposed) {
        return lower(exposed.cardinality(), rankSum(exposed));
    }

    /** The least p that so many exposed reels allow among these margins; as Tarone's for counts. */
    double leastAttainable(int exposed) {
        return exposed == 0 ? 1 : lower(exposed, leastRankSums[exposed - 1]);
    }

    /** The share of pairs of an exposed and another reel in which the exposed one has the lower margin; equal ones count half. */
    double shareLower(BitSet exposed) {
        double n1 = exposed.cardinality();
        double n2 = ranks.length - n1;
        return 1 - (rankSum(exposed) - n1 * (n1 + 1) / 2) / (n1 * n2);
    }

    private double rankSum(BitSet exposed) {
        return exposed.stream().mapToDouble(i -> ranks[i]).sum();
    }

    private double lower(int exposed, double rankSum) {
        int others = ranks.length - exposed;
        double variance = variance(exposed);
        if (!(variance > 0)) {
            return 1;
        }
        double u = rankSum - exposed * (exposed + 1.0) / 2;
        double pairs = (double) exposed * others;
        boolean isLow = u <= pairs / 2;
        double least = isLow ? u : pairs - u - 1;
        if (ties == 0 && Math.min(exposed, others) * (least + 1) <= MOST_EXACT_STEPS) {
            double tail = exactlyAtMost((int) Math.round(least), exposed, others);
            if (Double.isFinite(tail)) {
                return isLow ? tail : 1 - tail;
            }
        }
        return NORMAL.cumulativeProbability((u - pairs / 2 + STEP) / Math.sqrt(variance));
    }

    /** The chance of U at most that; not finite where there are more choices than a double counts. */
    static double exactlyAtMost(int u, int exposed, int others) {
        if (u < 0) {
            return 0;
        }
        int fewer = Math.min(exposed, others);
        int more = Math.max(exposed, others);
        double[] ways = new double[u + 1];
        ways[0] = 1;
        double choices = 1;
        for (int i = 1; i <= fewer; i++) {
            for (int v = u; v >= more + i; v--) {
                ways[v] -= ways[v - more - i];
            }
            for (int v = i; v <= u; v++) {
                ways[v] += ways[v - i];
            }
            choices *= (double) (more + i) / i;
        }
        return Math.min(1, Arrays.stream(ways).sum() / choices);
    }

    private double variance(int exposed) {
        double n = ranks.length;
        double others = n - exposed;
        return n > 1 ? exposed * others / VARIANCE_DIVISOR * (n + 1 - ties / (n * (n - 1))) : 0;
    }

    /**
     * The chance of ranks as low or lower within the strata, were exposure without effect in each; normal form.
     *
     * @param margins one a reel
     * @param exposed the places of the exposed reels
     * @param strata the places of the reels of each stratum
     */
    static double lower(double[] margins, BitSet exposed, List<BitSet> strata) {
        double below = 0;
        double variance = 0;
        for (BitSet stratum : strata) {
            int[] places = stratum.stream().toArray();
            BitSet within = new BitSet();
            for (int i = 0; i < places.length; i++) {
                within.set(i, exposed.get(places[i]));
            }
            RankTest test =
                    of(Arrays.stream(places).mapToDouble(i -> margins[i]).toArray());
            double weight = 1 / (places.length + 1.0);
            int n1 = within.cardinality();
            below += weight * (test.rankSum(within) - n1 * (places.length + 1.0) / 2);
            variance += weight * weight * test.variance(n1);
        }
        return variance > 0 ? NORMAL.cumulativeProbability(below / Math.sqrt(variance)) : 1;
    }
}
