package dev.reelproof.analysis;

import java.util.List;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;
import org.apache.commons.statistics.inference.AlternativeHypothesis;
import org.apache.commons.statistics.inference.FisherExactTest;

/**
 * Fisher's exact test, one-sided: do exposed reels fail more often than others? R. A. Fisher, The Design of Experiments, 1935. Over
 * strata: the exact conditional test for a common odds ratio, A. Agresti, Categorical Data Analysis, 1990. Both from memory.
 *
 * <p>Equation: p = P(X ≥ a), where X is hypergeometric: P(X = x) = C(n, x) C(N − n, F − x) / C(N, F). Over strata X is the sum of one
 * such count for each stratum, and a the sum of the observed counts.
 *
 * <p>Symbols: a failing exposed reels, n exposed reels, N reels, F failing reels; counts.
 *
 * <p>Range: any counts; the reels are independent given what they met.
 *
 * <p>Edge cases: p = 1 where no reel is exposed, all are, none fails or all fail. A stratum like that adds nothing.
 *
 * <p>Known error: the test is conservative, because counts are discrete: the true rate of false alarms is below the level. In double
 * precision the relative error of p is below 1e-9 for a few thousand reels.
 */
final class FisherOneSided {
    private static final FisherExactTest GREATER =
            FisherExactTest.withDefaults().with(AlternativeHypothesis.GREATER_THAN);

    private FisherOneSided() {}

    /** The chance of as many failing exposed reels or more if the exposure had no effect. */
    static double greater(CountTable table) {
        return saysNothing(table)
                ? 1
                : GREATER.test(new int[][] {
                            {table.exposedFailing(), table.exposed() - table.exposedFailing()},
                            {table.othersFailing(), table.others() - table.othersFailing()}
                        })
                        .getPValue();
    }

    /**
     * The least p that a table with these totals can reach. Where it is above the level, the exposure can never be significant, and
     * the correction for many tests need not count it. R. E. Tarone, A modified Bonferroni method for discrete data, Biometrics 46, 1990
     * (from memory).
     */
    static double leastAttainable(CountTable table) {
        int most = table.mostExposedFailing();
        return greater(new CountTable(table.exposed(), most, table.others(), table.failing() - most));
    }

    /** The chance of as many failing exposed reels or more in all strata together if the exposure had no effect in any. */
    static double greater(List<CountTable> strata) {
        double[] distribution = {1};
        int observed = 0;
        for (CountTable stratum : strata) {
            if (saysNothing(stratum)) {
                continue;
            }
            HypergeometricDistribution failing =
                    HypergeometricDistribution.of(stratum.reels(), stratum.failing(), stratum.exposed());
            int least = failing.getSupportLowerBound();
            double[] one = new double[failing.getSupportUpperBound() - least + 1];
            for (int i = 0; i < one.length; i++) {
                one[i] = failing.probability(least + i);
            }
            distribution = sum(distribution, one);
            observed += stratum.exposedFailing() - least;
        }
        double tail = 0;
        for (int i = distribution.length - 1; i >= observed; i--) {
            tail += distribution[i];
        }
        return Math.min(1, tail);
    }

    /** The distribution of the sum of two independent counts, each from 0. */
    private static double[] sum(double[] one, double[] other) {
        double[] both = new double[one.length + other.length - 1];
        for (int i = 0; i < one.length; i++) {
            for (int j = 0; j < other.length; j++) {
                both[i + j] += one[i] * other[j];
            }
        }
        return both;
    }

    private static boolean saysNothing(CountTable table) {
        return table.exposed() == 0 || table.others() == 0 || table.failing() == 0 || table.failing() == table.reels();
    }
}
