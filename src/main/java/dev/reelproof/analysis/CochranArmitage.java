package dev.reelproof.analysis;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The test for a trend in proportions, one-sided, given how many fail: do reels with a higher score fail more often? W. G. Cochran,
 * Biometrics 10 (1954) 417–451; P. Armitage, Biometrics 11 (1955) 375–386; over strata N. Mantel, Journal of the American Statistical
 * Association 58 (1963) 690–700. From memory, checked with published worked examples and an independent count.
 *
 * <p>Equation: p = P(T' ≥ T), T = Σ x over the failing reels, T' the same when the F failing ones of a stratum are drawn at random from
 * its N reels. Exact form: the number of the C(N, F) choices with each sum. Normal form: mean F x̄, variance F(N − F)/(N(N − 1)) Σ(x −
 * x̄)², both added up over the strata, with a continuity correction of half the step between sums.
 *
 * <p>Symbols: x the score of a reel, a whole number, such as a share in percent; x̄ the mean score of the stratum.
 *
 * <p>Range: any scores. The exact form where it takes at most {@value #MOST_EXACT_STEPS} steps.
 *
 * <p>Edge cases: p = 1 where all fail, none fails, or all scores are equal. A stratum like that adds nothing.
 *
 * <p>Known error: sums are discrete, so that the exact form is conservative.
 */
final class CochranArmitage {
    /** The most steps of the exact form; they take about a millisecond. */
    static final long MOST_EXACT_STEPS = 500_000;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double HALF = 0.5;

    private CochranArmitage() {}

    /** The scores of the reels of a stratum. */
    record Scores(int[] failing, int[] passing) {
        int[] all() {
            return IntStream.concat(Arrays.stream(failing), Arrays.stream(passing))
                    .toArray();
        }

        boolean saysNothing() {
            return failing.length == 0
                    || passing.length == 0
                    || Arrays.stream(all()).distinct().count() == 1;
        }

        /** The same with the least score at 0 and in whole steps. */
        Scores inSteps(int step) {
            int least = Arrays.stream(all()).min().orElseThrow();
            return new Scores(inSteps(failing, least, step), inSteps(passing, least, step));
        }

        private static int[] inSteps(int[] scores, int least, int step) {
            return Arrays.stream(scores).map(score -> (score - least) / step).toArray();
        }

        int sum() {
            return Arrays.stream(failing).sum();
        }

        /** The most that as many reels as fail can have together. */
        int most() {
            int[] sorted = Arrays.stream(all()).sorted().toArray();
            return Arrays.stream(sorted, passing.length, sorted.length).sum();
        }

        double mean() {
            return failing.length * Arrays.stream(all()).average().orElseThrow();
        }

        double variance() {
            double all = failing.length + passing.length;
            double middle = Arrays.stream(all()).average().orElseThrow();
            double squares = Arrays.stream(all())
                    .mapToDouble(score -> (score - middle) * (score - middle))
                    .sum();
            return failing.length * passing.length / (all * (all - 1)) * squares;
        }
    }

    /** The chance that failing reels have scores as high or higher in all strata together if the score had no effect in any. */
    static double greater(List<Scores> strata) {
        List<Scores> telling =
                strata.stream().filter(scores -> !scores.saysNothing()).toList();
        if (telling.isEmpty()) {
            return 1;
        }
        int step = step(telling);
        List<Scores> inSteps =
                telling.stream().map(scores -> scores.inSteps(step)).toList();
        return steps(inSteps) <= MOST_EXACT_STEPS ? exact(inSteps) : NORMAL.survivalProbability(deviate(inSteps, HALF));
    }

    /**
     * The sum of the failing reels' scores in standard deviations above its mean.
     *
     * @param continuity by how much the sum is lowered first
     */
    static double deviate(List<Scores> strata, double continuity) {
        double above = strata.stream()
                .mapToDouble(scores -> scores.sum() - scores.mean())
                .sum();
        double variance = strata.stream().mapToDouble(Scores::variance).sum();
        return (above - continuity) / Math.sqrt(variance);
    }

    /** The greatest number that divides all differences of scores. */
    private static int step(List<Scores> strata) {
        int step = 0;
        for (Scores scores : strata) {
            int[] all = scores.all();
            for (int score : all) {
                step = greatestDivisor(step, Math.abs(score - all[0]));
            }
        }
        return step;
    }

    private static int greatestDivisor(int one, int other) {
        return other == 0 ? one : greatestDivisor(other, one % other);
    }

    private static long steps(List<Scores> strata) {
        long steps = 0;
        long length = 1;
        for (Scores scores : strata) {
            long sums = scores.most() + 1L;
            steps += sums * scores.failing.length * (scores.failing.length + scores.passing.length) + length * sums;
            length += sums - 1;
        }
        return steps;
    }

    private static double exact(List<Scores> strata) {
        double[] chances = {1};
        int observed = 0;
        for (Scores scores : strata) {
            chances = added(chances, distribution(scores));
            observed += scores.sum();
        }
        double tail = 0;
        for (int sum = chances.length - 1; sum >= observed; sum--) {
            tail += chances[sum];
        }
        return Math.min(1, tail);
    }

    /** The chance of each sum of the scores of as many reels as fail, drawn at random. */
    private static double[] distribution(Scores scores) {
        int drawn = scores.failing.length;
        double[][] ways = new double[drawn + 1][scores.most() + 1];
        ways[0][0] = 1;
        for (int score : scores.all()) {
            for (int count = drawn; count >= 1; count--) {
                for (int sum = ways[count].length - 1; sum >= score; sum--) {
                    ways[count][sum] += ways[count - 1][sum - score];
                }
            }
        }
        double all = Arrays.stream(ways[drawn]).sum();
        return Arrays.stream(ways[drawn]).map(way -> way / all).toArray();
    }

    private static double[] added(double[] one, double[] other) {
        double[] both = new double[one.length + other.length - 1];
        for (int i = 0; i < one.length; i++) {
            for (int j = 0; j < other.length; j++) {
                both[i + j] += one[i] * other[j];
            }
        }
        return both;
    }
}
