package dev.reelproof.analysis;

import java.util.ArrayList;
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
 * precision the relative error of p is below 1e-9 for a few thousand reels. Over strata with many failing reels the normal form takes
 * the place of the exact one.
 */
final class FisherOneSided {
    /** The most steps that the exact form over strata may take; they take less than a tenth of a millisecond. */
    static final int MOST_EXACT_STEPS = 50_000;

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

    /** The least p that a table with these totals can reach. */
    static double leastAttainable(CountTable table) {
        int most = table.mostExposedFailing();
        return greater(new CountTable(table.exposed(), most, table.others(), table.failing() - most));
    }

    /** The chance of as many failing exposed reels or more in all strata together if the exposure had no effect in any. */
    static double greater(List<CountTable> strata) {
        return overStrata(strata).p();
    }

    /**
     * The same with the least that it can come to. Where the exact distribution would take more than {@value #MOST_EXACT_STEPS} steps, the
     * chance is that of {@link MantelHaenszel}.
     */
    static Weighing.Chance overStrata(List<CountTable> strata) {
        List<CountTable> telling = new ArrayList<>();
        for (CountTable table : strata) {
            if (!saysNothing(table)) {
                telling.add(table);
            }
        }
        if (telling.isEmpty()) {
            return new Weighing.Chance(1, 1);
        }
        if (telling.size() == 1) {
            return new Weighing.Chance(greater(telling.get(0)), leastAttainable(telling.get(0)));
        }
        if (steps(telling) > MOST_EXACT_STEPS) {
            return new Weighing.Chance(
                    MantelHaenszel.greater(telling),
                    telling.stream()
                            .mapToDouble(table -> hypergeometric(table).probability(table.mostExposedFailing()))
                            .reduce(1, (one, other) -> one * other));
        }
        double[] distribution = {1};
        int observed = 0;
        double least = 1;
        for (CountTable stratum : telling) {
            double[] own = distribution(stratum);
            distribution = sum(distribution, own);
            observed += stratum.exposedFailing() - least(stratum);
            least *= own[own.length - 1];
        }
        double tail = 0;
        for (int i = distribution.length - 1; i >= observed; i--) {
            tail += distribution[i];
        }
        return new Weighing.Chance(Math.min(1, tail), least);
    }

    private static HypergeometricDistribution hypergeometric(CountTable table) {
        return HypergeometricDistribution.of(table.reels(), table.failing(), table.exposed());
    }

    /** The least exposed reels that can fail with these totals. */
    private static int least(CountTable table) {
        return Math.max(0, table.exposed() + table.failing() - table.reels());
    }

    private static long steps(List<CountTable> strata) {
        long steps = 0;
        long length = 1;
        for (CountTable stratum : strata) {
            long more = stratum.mostExposedFailing() - least(stratum) + 1L;
            steps += length * more;
            length += more - 1;
        }
        return steps;
    }

    /**
     * The chance of each count of failing exposed reels, from the least on. From the likeliest count P(x + 1) / P(x) =
     * (n − x)(F − x) / ((x + 1)(N − n − F + x + 1)) leads up and down, so that nothing underflows before its neighbours do.
     */
    private static double[] distribution(CountTable table) {
        int least = least(table);
        double[] chances = new double[table.mostExposedFailing() - least + 1];
        double n = table.exposed();
        double failing = table.failing();
        double rest = table.reels() - n - failing;
        int likeliest = (int) ((n + 1) * (failing + 1) / (table.reels() + 2)) - least;
        int middle = Math.max(0, Math.min(chances.length - 1, likeliest));
        chances[middle] = hypergeometric(table).probability(least + middle);
        for (int i = middle; i + 1 < chances.length; i++) {
            double x = least + i;
            chances[i + 1] = chances[i] * ((n - x) * (failing - x)) / ((x + 1) * (rest + x + 1));
        }
        for (int i = middle; i > 0; i--) {
            double x = least + i - 1;
            chances[i - 1] = chances[i] * ((x + 1) * (rest + x + 1)) / ((n - x) * (failing - x));
        }
        return chances;
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
