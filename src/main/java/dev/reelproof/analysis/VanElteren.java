package dev.reelproof.analysis;

import java.util.BitSet;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The rank-sum test over strata, one-sided: do exposed reels have lower margins than others of their stratum? P. H. van Elteren, On the
 * combination of independent two-sample tests of Wilcoxon, Bulletin of the International Statistical Institute 37 (1960) 351–361; from
 * memory, checked by hand.
 *
 * <p>Equation: z = Σ w (R − n1(N + 1)/2) / √Σ w² v, w = 1/(N + 1); p = Φ(z).
 *
 * <p>Symbols: in each stratum N reels, n1 of them exposed, R the sum of the exposed reels' ranks within the stratum, v the variance of R
 * ({@link MannWhitneyTest}); no units.
 *
 * <p>Range: margins in one unit. Where one stratum alone says something, its own test takes over, which is exact where it can be.
 *
 * <p>Edge cases: a stratum in which all or none are exposed, or all margins are equal, says nothing; p = 1 where none says anything.
 *
 * <p>Known error: normal without continuity. With very few exposed reels it is too cautious far out in the tail.
 */
final class VanElteren {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final Strata strata;
    private final List<MannWhitneyTest> tests;

    private VanElteren(Strata strata, List<MannWhitneyTest> tests) {
        this.strata = strata;
        this.tests = tests;
    }

    /** The test of these margins over strata of the same reels. */
    static VanElteren of(MannWhitneyTest margins, Strata strata) {
        return new VanElteren(strata, margins.within(strata));
    }

    /** The chance of ranks as low or lower within the strata if the exposure had no effect in any. */
    double lower(BitSet exposed) {
        int[] counts = strata.count(exposed);
        return lower(counts, rankSums(exposed), true);
    }

    /** The same by the normal form, also where one stratum alone says something. */
    double lowerByNormal(BitSet exposed) {
        return lower(strata.count(exposed), rankSums(exposed), false);
    }

    /** The least p that so many exposed reels in each stratum can reach. */
    double leastAttainable(BitSet exposed) {
        int[] counts = strata.count(exposed);
        double[] lowest = new double[counts.length];
        for (int stratum = 0; stratum < lowest.length; stratum++) {
            lowest[stratum] = tests.get(stratum).lowestRankSum(counts[stratum]);
        }
        return lower(counts, lowest, true);
    }

    private double[] rankSums(BitSet exposed) {
        double[] sums = new double[strata.count()];
        for (int reel = exposed.nextSetBit(0); reel >= 0; reel = exposed.nextSetBit(reel + 1)) {
            int stratum = strata.of(reel);
            sums[stratum] += tests.get(stratum).rank(reel);
        }
        return sums;
    }

    private double lower(int[] exposed, double[] rankSums, boolean exactWhereAlone) {
        double below = 0;
        double variance = 0;
        int telling = 0;
        int last = 0;
        for (int stratum = 0; stratum < exposed.length; stratum++) {
            MannWhitneyTest test = tests.get(stratum);
            double own = test.variance(exposed[stratum]);
            if (own > 0) {
                double all = test.reels();
                double weight = 1 / (all + 1);
                below += weight * (rankSums[stratum] - exposed[stratum] * (all + 1) / 2);
                variance += weight * weight * own;
                telling++;
                last = stratum;
            }
        }
        if (telling == 1 && exactWhereAlone) {
            return tests.get(last).lower(exposed[last], rankSums[last]);
        }
        return telling > 0 ? NORMAL.cumulativeProbability(below / Math.sqrt(variance)) : 1;
    }
}
