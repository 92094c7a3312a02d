package dev.reelproof.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.statistics.inference.AlternativeHypothesis;
import org.apache.commons.statistics.inference.ContinuityCorrection;
import org.apache.commons.statistics.inference.MannWhitneyUTest;
import org.apache.commons.statistics.inference.PValueMethod;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each statistic that suspects are ranked by, against published worked examples. */
class EvidenceTestsValidationTest {
    /** Sums of some ten terms in doubles: the last digits printed by the tools that the figures were computed with. */
    private static final double DOUBLES = 1e-11;

    private static CountTable table(int a, int b, int c, int d) {
        return new CountTable(a + b, a, c + d, c);
    }

    // Sources: lady tasting tea, R. A. Fisher 1935 (table from memory; p computed, 17/70). Convictions of twins, Fisher
    // (found in
    // public test suites that quote R's fisher.test; one-sided p computed): "less" there is "greater" with the rows
    // swapped. Dieting
    // (from memory; p computed): rows swapped likewise. The last is ours, computed: 9 of 12 reels with the lot fail, 6
    // of 88 others.
    // Computed with scipy. Tolerance: half of the last digit printed.
    @ParameterizedTest(name = "[[{0}, {1}], [{2}, {3}]]: p = {4}")
    @CsvSource({
        "3,  1,  1, 3,  0.242857142857,  5e-13",
        "10, 3,  2, 15, 0.000465180943,  5e-13",
        "11, 3,  1, 9,  0.001379728093,  5e-13",
        "9,  3,  6, 82, 4.809319458e-07, 5e-17",
    })
    void fisherOneSided(int a, int b, int c, int d, double p, double halfOfLastDigit) {
        CountTable table = table(a, b, c, d);
        assertEquals(p, FisherOneSided.greater(table), halfOfLastDigit);
        assertEquals(p, FisherOneSided.greater(List.of(table)), halfOfLastDigit, "one stratum is no stratum");
    }

    // Source: whales and sharks, documentation of scipy.stats.fisher_exact (read): odds ratio 20, two-sided p
    // 0.034965034965. The
    // two-sided p there is that of the one-sided test plus that of the one table beyond on the other side; by hand:
    // greater = [C(10,8) C(6,1) + C(10,9) C(6,0)] / C(16,9) = (270 + 10) / 11440.
    @Test
    void fisherOfWhalesAndSharks() {
        CountTable table = table(8, 2, 1, 5);
        assertEquals(280.0 / 11440, FisherOneSided.greater(table), DOUBLES);
        assertEquals(20, table.oddsRatio().orElseThrow(), 0);
        // With 9 of 16 failing and 10 exposed, 9 exposed failing are the most: C(10,9) / C(16,9).
        assertEquals(10.0 / 11440, FisherOneSided.leastAttainable(table), DOUBLES);
    }

    // Source: penicillin and rabbits, A. Agresti, Categorical Data Analysis (1990), pages 231-237, as in the example of
    // R's
    // mantelhaen.test (read): exact, one-sided p = 0.020. Tolerance: half of the last digit printed there.
    @Test
    void exactOverStrata() {
        List<CountTable> penicillin =
                List.of(table(0, 6, 0, 5), table(3, 3, 0, 6), table(6, 0, 2, 4), table(5, 1, 6, 0), table(2, 0, 5, 0));
        assertEquals(0.020, FisherOneSided.greater(penicillin), 0.0005);
        // Computed with scipy's hypergeometric distribution and numpy's convolution.
        assertEquals(0.019972451790633606, FisherOneSided.greater(penicillin), DOUBLES);
    }

    @Test
    void countsThatSayNothingAreNoEvidence() {
        for (CountTable nothing : List.of(
                table(0, 0, 3, 4), table(3, 4, 0, 0), table(0, 4, 0, 4), table(4, 0, 4, 0), table(0, 0, 0, 0))) {
            assertEquals(1, FisherOneSided.greater(nothing), 0, nothing.toString());
            assertEquals(1, FisherOneSided.greater(List.of(nothing)), 0, nothing.toString());
        }
        List<CountTable> one = List.of(table(9, 3, 6, 82), table(3, 4, 0, 0));
        assertEquals(
                FisherOneSided.greater(one.get(0)), FisherOneSided.greater(one), 1e-18, "a stratum that says nothing");
    }

    // Source: Benjamini and Hochberg 1995, section 4.1 (the p-values read where scipy's documentation quotes them): at
    // 0.05 four are
    // rejected. Adjusted values computed with scipy; tolerance: half of the last digit given.
    @Test
    void benjaminiHochberg() {
        double[] p = {
            0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262, 0.5719, 0.6528,
            0.7590, 1.0000
        };
        double[] q = {
            0.0015, 0.003, 0.0095, 0.035625, 0.0603, 0.0638571, 0.0638571, 0.0645, 0.0765, 0.486, 0.581182, 0.714875,
            0.753231, 0.813214, 1
        };
        assertEquals(
                4,
                Arrays.stream(FalseDiscovery.adjusted(p)).filter(x -> x <= 0.05).count());
        assertEquals(9, Arrays.stream(p).filter(x -> x <= 0.05).count());
        double[] adjusted = FalseDiscovery.adjusted(p);
        for (int i = 0; i < p.length; i++) {
            assertEquals(q[i], adjusted[i], 5e-7, "of p = " + p[i]);
        }
        // In another order, each keeps its own.
        double[] backwards = new double[p.length];
        Arrays.setAll(backwards, i -> p[p.length - 1 - i]);
        double[] adjustedBackwards = FalseDiscovery.adjusted(backwards);
        for (int i = 0; i < p.length; i++) {
            assertEquals(adjusted[i], adjustedBackwards[p.length - 1 - i], 0);
        }
    }

    // Source: R. G. Newcombe, Statistics in Medicine 17 (1998) 873-890, Table II, method 10 (values read in public test
    // suites that
    // quote the table). Tolerance: half of the last digit printed.
    @ParameterizedTest(name = "{0}/{1} − {2}/{3}: {4} to {5}")
    @CsvSource({
        "56, 70, 48, 80,  0.0524, 0.3339",
        "9,  10, 3,  10,  0.1705, 0.8090",
        "6,  7,  2,  7,   0.0582, 0.8062",
        "5,  56, 0,  29, -0.0381, 0.1926",
        "0,  10, 0,  20, -0.1611, 0.2775",
        "0,  10, 0,  10, -0.2775, 0.2775",
        "10, 10, 0,  20,  0.6791, 1.0000",
    })
    void newcombe(int a, int m, int b, int n, double lower, double upper) {
        Interval difference = RiskDifference.of(new CountTable(m, a, n, b));
        assertEquals(lower, difference.lower(), 5e-5);
        assertEquals((double) a / m - (double) b / n, difference.estimate(), DOUBLES);
        assertEquals(upper, difference.upper(), 5e-5);
    }

    // Source: R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, Table I, score method (values read in a public
    // test suite
    // that quotes the table). Tolerance: half of the last digit printed.
    @ParameterizedTest(name = "{0}/{1}: {2} to {3}")
    @CsvSource({"81, 263, 0.2553, 0.3662", "15, 148, 0.0624, 0.1605", "0, 20, 0, 0.1611", "1, 29, 0.0061, 0.1718"})
    void wilson(int failing, int reels, double lower, double upper) {
        Interval share = RiskDifference.wilson(failing, reels);
        assertEquals(lower, share.lower(), 5e-5);
        assertEquals(upper, share.upper(), 5e-5);
    }

    private static BitSet first(int count) {
        BitSet first = new BitSet();
        first.set(0, count);
        return first;
    }

    private static double[] together(double[] exposed, double[] others) {
        return DoubleStream.concat(Arrays.stream(exposed), Arrays.stream(others))
                .toArray();
    }

    /** The chance that the first of two samples is as low or lower. */
    private static double lower(double[] exposed, double[] others) {
        return MannWhitneyTest.of(together(exposed, others)).lower(first(exposed.length));
    }

    // Source: documentation of scipy.stats.mannwhitneyu (page found, data from memory): U = 17 of 20, exact two-sided p
    // = 1/9, so
    // that one-sided it is 1/18.
    @Test
    void mannWhitneyExact() {
        double[] x = {19, 22, 16, 29, 24};
        double[] y = {20, 11, 17, 12};
        assertEquals(1.0 / 18, lower(y, x), DOUBLES);
        assertEquals(17.0 / 20, MannWhitneyTest.of(together(y, x)).shareLower(first(y.length)), DOUBLES);
    }

    // Source: placenta, M. Hollander and D. A. Wolfe (data and statistic found; R's session prints the two-sided p
    // 0.2544): W = 35,
    // one-sided exact p = 0.1272061272 (computed with scipy). Shift 0.305, 95 % interval −0.15 to 0.76 (R's
    // wilcox.test, from memory;
    // recomputed as the 9th and 42nd of the 50 differences).
    @Test
    void hollanderAndWolfe() {
        double[] term = {0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46};
        double[] weeks = {1.15, 0.88, 0.90, 0.74, 1.21};
        assertEquals(0.1272061272061272, lower(weeks, term), DOUBLES);
        assertEquals(35.0 / 50, MannWhitneyTest.of(together(weeks, term)).shareLower(first(weeks.length)), DOUBLES);
        Interval shift = HodgesLehmannShift.of(term, weeks);
        assertEquals(-0.15, shift.lower(), DOUBLES);
        assertEquals(0.305, shift.estimate(), DOUBLES);
        assertEquals(0.76, shift.upper(), DOUBLES);
    }

    // Source: sprays A and C of the data set InsectSprays of R (data from memory); p computed with scipy, normal form
    // with ties and
    // continuity: C below A, 1.9181272720632e-05.
    @Test
    void mannWhitneyWithTies() {
        double[] a = {10, 7, 20, 14, 14, 12, 10, 23, 17, 20, 14, 13};
        double[] c = {0, 1, 7, 2, 3, 1, 2, 1, 3, 0, 1, 4};
        assertEquals(1.9181272720632e-05, lower(c, a), 1e-16);
    }

    @Test
    void agreesWithTheLibraryAndWithItself() {
        Random random = new Random(20260211);
        for (int round = 0; round < 200; round++) {
            boolean hasTies = round % 2 == 1;
            double[] x = margins(random, 1 + random.nextInt(12), hasTies);
            double[] y = margins(random, 1 + random.nextInt(25), hasTies);
            boolean isTied = Arrays.stream(together(x, y)).distinct().count() < x.length + y.length;
            double library = MannWhitneyUTest.withDefaults()
                    .with(AlternativeHypothesis.LESS_THAN)
                    .with(ContinuityCorrection.ENABLED)
                    .with(isTied ? PValueMethod.ASYMPTOTIC : PValueMethod.EXACT)
                    .test(x, y)
                    .getPValue();
            boolean isAllEqual = Arrays.stream(together(x, y)).distinct().count() == 1;
            String which = "round " + round + " of seed 20260211";
            assertEquals(isAllEqual ? 1 : library, lower(x, y), DOUBLES, which);
            if (!isTied) {
                assertTrue(
                        MannWhitneyTest.of(together(x, y)).leastAttainable(x.length) <= lower(x, y) + DOUBLES, which);
            }
        }
    }

    private static double[] margins(Random random, int count, boolean hasTies) {
        return random.doubles(count)
                .map(margin -> hasTies ? Math.floor(margin * 4) : margin)
                .toArray();
    }

    // C(503, 3) choices: with the three lowest of all the chance is one in that many, where the normal form would say
    // 1e-3.
    @Test
    void isExactForFewExposedAmongMany() {
        double[] margins =
                DoubleStream.iterate(0, margin -> margin + 1).limit(503).toArray();
        assertEquals(1 / (503.0 * 502 * 501 / 6), MannWhitneyTest.of(margins).lower(first(3)), 1e-20);
        BitSet highest = new BitSet();
        highest.set(500, 503);
        assertEquals(1, MannWhitneyTest.of(margins).lower(highest), 1e-12);
    }

    /** Reels that are in none of the sets are in a stratum of their own. */
    private static VanElteren overStrata(double[] margins, BitSet... strata) {
        List<Integer> keys = new ArrayList<>();
        for (int i = 0; i < margins.length; i++) {
            int reel = i;
            keys.add(IntStream.range(0, strata.length)
                    .filter(stratum -> strata[stratum].get(reel))
                    .findFirst()
                    .orElse(strata.length + reel));
        }
        return VanElteren.of(MannWhitneyTest.of(margins), Strata.by(keys));
    }

    // Van Elteren: with one stratum z is that of the rank-sum test without continuity. Source of the figure:
    // mannwhitneyu as above,
    // two-sided without continuity 0.0864107330 (computed), of which half. Tolerance: half of the last digit printed.
    @Test
    void overOneStratumItIsTheRankSumTest() {
        double[] margins = {20, 11, 17, 12, 19, 22, 16, 29, 24};
        assertEquals(0.0864107330 / 2, overStrata(margins, first(9)).lowerByNormal(first(4)), 5e-11);
    }

    // By hand: in each of two strata of three the exposed reel is the lowest; R − n1(N + 1)/2 = −1, variance 2/3, w =
    // 1/4:
    // z = −(1/4 + 1/4) / √(2 · 2/3 / 16) = −√3; the third stratum has no other reel and says nothing.
    @Test
    void addsStrataUp() {
        double[] margins = {1, 2, 3, 101, 102, 103, 50};
        BitSet exposed = new BitSet();
        exposed.set(0);
        exposed.set(3);
        exposed.set(6);
        BitSet one = first(3);
        BitSet other = new BitSet();
        other.set(3, 6);
        BitSet alone = new BitSet();
        alone.set(6);
        // Φ(−√3) = 0.0416322583 (normal tables; computed with scipy).
        assertEquals(0.0416322583, overStrata(margins, one, other, alone).lower(exposed), 5e-11);
    }

    @Test
    void theShiftIsTheMedianOfAllDifferences() {
        Random random = new Random(20260212);
        for (int round = 0; round < 100; round++) {
            double[] x = margins(random, 1 + random.nextInt(30), round % 3 == 0);
            double[] y = margins(random, 1 + random.nextInt(30), round % 3 == 0);
            double[] differences = Arrays.stream(x)
                    .flatMap(one -> Arrays.stream(y).map(other -> one - other))
                    .sorted()
                    .toArray();
            int n = differences.length;
            double median = (differences[(n - 1) / 2] + differences[n / 2]) / 2;
            Interval shift = HodgesLehmannShift.of(x, y);
            String which = "round " + round + " of seed 20260212";
            assertEquals(median, shift.estimate(), 0, which);
            if (Double.isFinite(shift.lower())) {
                int from = Arrays.binarySearch(differences, shift.lower());
                assertTrue(from >= 0, which);
                assertTrue(Arrays.binarySearch(differences, shift.upper()) >= 0, which);
            }
        }
    }
}
