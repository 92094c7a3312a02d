package dev.reelproof.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** The tests over weeks and over shares, against published worked tables and figures counted by another route. */
class StrataAndTrendValidationTest {
    /** Sums of some hundred terms in doubles. */
    private static final double DOUBLES = 1e-11;

    private static CountTable table(int a, int n, int c, int m) {
        return new CountTable(n, a, m, c);
    }

    // Source: admissions at Berkeley in 1973 by department, data set UCBAdmissions of R (counts from memory, checked by
    // the figures); R's
    // mantelhaen.test as printed in public lecture notes (read): with continuity 1.4269, p = 0.2323 two-sided, common
    // odds ratio 0.9046968
    // of men. The excess is of women, who are the exposed here: p one-sided is half of it, the odds ratio its inverse.
    // Tolerance: half of
    // the last digit printed.
    @Test
    void mantelHaenszelOfAdmissions() {
        List<CountTable> women = List.of(
                table(89, 108, 512, 825),
                table(17, 25, 353, 560),
                table(202, 593, 120, 325),
                table(131, 375, 138, 417),
                table(94, 393, 53, 191),
                table(24, 341, 22, 373));
        double p = MantelHaenszel.greater(women);
        assertEquals(0.2323 / 2, p, 0.00005 / 2);
        assertEquals(0.2323, ChiSquaredDistribution.of(1).survivalProbability(1.4269), 0.00005);
        assertEquals(0.9046968, 1 / MantelHaenszel.oddsRatio(women).orElseThrow(), 5e-8);
        // The exact chance is near it.
        assertEquals(p, FisherOneSided.greater(women), 0.002);
    }

    // Source: A. Agresti, Categorical Data Analysis (1990), pages 231-237, as in the example of R's mantelhaen.test
    // (read): penicillin and
    // rabbits, p = 0.047 two-sided with continuity. Tolerance: half of the last digit printed.
    @Test
    void mantelHaenszelOfRabbits() {
        List<CountTable> rabbits =
                List.of(table(0, 6, 0, 5), table(3, 6, 0, 6), table(6, 6, 2, 6), table(5, 6, 6, 6), table(2, 2, 5, 5));
        assertEquals(0.047 / 2, MantelHaenszel.greater(rabbits), 0.0005 / 2);
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/analysis/strata-exact-computed.csv", delimiter = ';', useHeadersInDisplayName = true)
    void theExactChanceOverStrataIsThatOfACountOfAllChoices(String strata, double p) {
        List<CountTable> tables = Arrays.stream(strata.split(" "))
                .map(one -> Arrays.stream(one.split("[/:]"))
                        .mapToInt(Integer::parseInt)
                        .toArray())
                .map(counts -> table(counts[0], counts[1], counts[2], counts[3]))
                .toList();
        assertEquals(p, FisherOneSided.greater(tables), DOUBLES);
        List<CountTable> most = tables.stream()
                .map(table -> {
                    int failing = table.mostExposedFailing();
                    return new CountTable(table.exposed(), failing, table.others(), table.failing() - failing);
                })
                .toList();
        assertEquals(
                FisherOneSided.greater(most), FisherOneSided.overStrata(tables).least(), DOUBLES);
    }

    /** Where the exact form would take too long, the normal one is near it. */
    @Test
    void theNormalFormTakesOverWhereMuchFails() {
        Random random = new Random(20261129);
        for (int round = 0; round < 20; round++) {
            List<CountTable> strata = new ArrayList<>();
            for (int week = 0; week < 10; week++) {
                int exposed = 100 + random.nextInt(100);
                strata.add(new CountTable(exposed, exposed * 3 / 10 + random.nextInt(4), 300, 90));
            }
            double taken = FisherOneSided.greater(strata);
            assertEquals(MantelHaenszel.greater(strata), taken, 0, "more than the exact form may take");
            assertEquals(convolved(strata), taken, 0.02 * taken, "round " + round);
        }
    }

    /** The exact chance without a bound of work, by P(x) in logarithms. */
    private static double convolved(List<CountTable> strata) {
        double[] chances = {1};
        int observed = 0;
        for (CountTable table : strata) {
            double[] one = IntStream.rangeClosed(0, table.exposed())
                    .mapToDouble(x -> Math.exp(choose(table.exposed(), x)
                            + choose(table.others(), table.failing() - x)
                            - choose(table.reels(), table.failing())))
                    .toArray();
            double[] both = new double[chances.length + one.length - 1];
            for (int i = 0; i < chances.length; i++) {
                for (int j = 0; j < one.length; j++) {
                    both[i + j] += chances[i] * one[j];
                }
            }
            chances = both;
            observed += table.exposedFailing();
        }
        return Arrays.stream(chances, observed, chances.length).sum();
    }

    private static double choose(int n, int k) {
        return k < 0 || k > n
                ? Double.NEGATIVE_INFINITY
                : IntStream.rangeClosed(1, k)
                        .mapToDouble(i -> Math.log(n - k + i) - Math.log(i))
                        .sum();
    }

    // Sources: R's prop.trend.test of smokers (session read in the archive of R-help): X-squared 8.2249, p = 0.004132;
    // the shares fall, so
    // that smokers are the passing here. Breast cancer by age at first birth, B. Rosner, Fundamentals of Biostatistics
    // (data read in
    // lecture notes; 129.01 from memory); alcohol and malformations, B. I. Graubard and E. L. Korn 1987 in A. Agresti,
    // Categorical Data
    // Analysis (from memory): 6.57. The first two divide by N where the given number of failing reels asks for N − 1.
    // Tolerance: half of
    // the last digit printed.
    @ParameterizedTest(name = "{3}")
    @CsvSource({
        "3 3 7 12,            83 90 129 70,           1 2 3 4,     8.2249, 0.00005, true",
        "320 1206 1011 463 220, 1422 4432 2893 1092 406, 1 2 3 4 5, 129.01, 0.005,   true",
        "48 38 5 1 1,         17066 14464 788 126 37, 0 1 3 8 14,  6.57,   0.005,   false",
    })
    void cochranArmitage(
            String failing, String passing, String scores, double square, double halfOfLastDigit, boolean byAll) {
        CochranArmitage.Scores one = new CochranArmitage.Scores(repeated(scores, failing), repeated(scores, passing));
        double all = one.failing().length + one.passing().length;
        double deviate = CochranArmitage.deviate(List.of(one), 0);
        assertTrue(deviate > 0);
        assertEquals(square, deviate * deviate * (byAll ? all / (all - 1) : 1), halfOfLastDigit);
    }

    private static int[] numbers(String words) {
        return Arrays.stream(words.trim().split("[ ,]+"))
                .filter(word -> !word.isEmpty())
                .mapToInt(Integer::parseInt)
                .toArray();
    }

    private static int[] repeated(String scores, String times) {
        int[] score = numbers(scores);
        int[] time = numbers(times);
        return IntStream.range(0, score.length)
                .flatMap(i -> IntStream.generate(() -> score[i]).limit(time[i]))
                .toArray();
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/analysis/trend-exact-computed.csv", delimiter = ';', useHeadersInDisplayName = true)
    void theExactChanceOfATrendIsThatOfACountOfAllChoices(String strata, double p) {
        List<CochranArmitage.Scores> scores = Stream.of(strata.split(" "))
                .map(one -> one.split(":", 2))
                .map(one -> new CochranArmitage.Scores(numbers(one[0]), numbers(one[1])))
                .toList();
        assertEquals(p, CochranArmitage.greater(scores), DOUBLES);
    }

    /** Scores of 0 and 1 are an exposure: the trend is the exact test over strata. */
    @Test
    void aTrendOverTwoScoresIsTheTestOfAnExposure() {
        Random random = new Random(20261130);
        for (int round = 0; round < 50; round++) {
            List<CountTable> tables = new ArrayList<>();
            List<CochranArmitage.Scores> scores = new ArrayList<>();
            for (int week = 0; week < 4; week++) {
                int n = random.nextInt(12);
                int m = random.nextInt(15);
                int a = random.nextInt(n + 1);
                int c = random.nextInt(m + 1);
                tables.add(table(a, n, c, m));
                scores.add(new CochranArmitage.Scores(
                        repeated("1 0", a + " " + c), repeated("1 0", (n - a) + " " + (m - c))));
            }
            assertEquals(FisherOneSided.greater(tables), CochranArmitage.greater(scores), DOUBLES, "round " + round);
        }
    }

    /** Where the exact form would take too long, the normal one takes over: with 400 reels it is near a count of random draws. */
    @Test
    void theNormalFormOfATrendIsNearARandomCount() {
        Random random = new Random(20261131);
        int[] scores = random.ints(400, 1, 101).toArray();
        int[] failing = Arrays.copyOf(scores, 80);
        Arrays.sort(failing);
        failing[0] += 60; // some evidence
        int[] passing = Arrays.copyOfRange(scores, 80, 400);
        int sum = Arrays.stream(failing).sum();
        int[] all =
                IntStream.concat(Arrays.stream(failing), Arrays.stream(passing)).toArray();
        int draws = 40_000;
        int extreme = 0;
        for (int draw = 0; draw < draws; draw++) {
            int drawn = 0;
            for (int i = 0; i < failing.length; i++) {
                int swap = i + random.nextInt(all.length - i);
                int score = all[swap];
                all[swap] = all[i];
                all[i] = score;
                drawn += score;
            }
            extreme += drawn >= sum ? 1 : 0;
        }
        double share = (double) extreme / draws;
        // Four standard deviations of the count.
        assertEquals(
                share,
                CochranArmitage.greater(List.of(new CochranArmitage.Scores(failing, passing))),
                4 * Math.sqrt(share * (1 - share) / draws));
    }

    @Test
    void moreTestsThanAreGivenCountAsWithoutEvidence() {
        double[] p = {0.03, 0.001, 0.2};
        double[] padded = FalseDiscovery.adjusted(0.03, 0.001, 0.2, 1, 1, 1, 1, 1);
        assertTrue(Arrays.equals(Arrays.copyOf(padded, 3), FalseDiscovery.adjusted(p, 8)));
        assertThrows(IllegalArgumentException.class, () -> FalseDiscovery.adjusted(p, 2));
    }
}
