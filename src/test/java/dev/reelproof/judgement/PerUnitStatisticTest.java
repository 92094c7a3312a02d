package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.IntBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A statistic of each unit and of each pair of units, 7 CFR 1755.870(h)(4)(iii): near-end crosstalk at 772 kHz, mean less one standard deviation,
 * "for any unit within the cable".
 *
 * <p>The cable has 100 pairs in four units of 25 that lie in a ring: 1 touches 2 and 4, 3 touches 2 and 4; 1 and 3, 2 and 4 lie apart. In each
 * population half of the values lie a spread above the middle and half below, so that mean less sigma is middle − spread · √(n/(n − 1)).
 */
class PerUnitStatisticTest {
    private static final FrequencyGrid AT_772_KHZ = FrequencyGrid.ofMegahertz(0.772);
    private static final int PAIRS_A_UNIT = 25;
    private static final int WITHIN_A_UNIT = PAIRS_A_UNIT * (PAIRS_A_UNIT - 1) / 2;
    private static final int BETWEEN_TWO_UNITS = PAIRS_A_UNIT * PAIRS_A_UNIT;
    private static final double SIGMA = 3.02;
    private static final double HALF_LAST_PLACE = 0.005;
    private static final Particulars EACH_UNIT = new Particulars(
            true, OptionalDouble.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Per.UNIT);

    private static CoreUnit unit(int number, Integer... touches) {
        return new CoreUnit(number, (number - 1) * PAIRS_A_UNIT + 1, number * PAIRS_A_UNIT, Set.of(touches));
    }

    private static int unitOf(int pair) {
        return (pair - 1) / PAIRS_A_UNIT;
    }

    private static Requirement next(Scope scope, double limit, Particulars particulars) {
        return RequirementBuilder.of(Property.NEXT, Bench.atLeast(limit, 0), new Domain.Spot(0.772), "dB")
                .id("next")
                .statistic(Statistic.MEAN_MINUS_SIGMA)
                .scope(scope)
                .particulars(particulars)
                .build();
    }

    /** Values whose mean less sigma is what is asked for each two units; of an odd number, one lies in the middle. */
    private static Bench cable(Requirement requirement, double[][] meanLessSigma) {
        Bench bench = new Bench()
                .pairs(4 * PAIRS_A_UNIT)
                .units(unit(1, 2, 4), unit(2, 1, 3), unit(3, 2, 4), unit(4, 1, 3))
                .require(requirement);
        int[][] met = new int[4][4];
        IntBinaryOperator number = (one, other) -> met[one][other]++;
        for (int pair = 1; pair <= 4 * PAIRS_A_UNIT; pair++) {
            for (int partner = pair + 1; partner <= 4 * PAIRS_A_UNIT; partner++) {
                int one = unitOf(pair);
                int other = unitOf(partner);
                int count = one == other ? WITHIN_A_UNIT : BETWEEN_TWO_UNITS;
                int spread = count - count % 2;
                double above = SIGMA * Math.sqrt((count - 1.0) / spread);
                int place = number.applyAsInt(one, other);
                double value =
                        meanLessSigma[one][other] + SIGMA + (place == spread ? 0 : place % 2 == 0 ? above : -above);
                bench.sweep(Property.NEXT, Subject.ofCombination(pair, partner).at(End.NEAR), AT_772_KHZ, f -> value);
            }
        }
        return bench;
    }

    private static double[][] within(double... units) {
        double[][] all = new double[4][4];
        for (int one = 0; one < 4; one++) {
            for (int other = one; other < 4; other++) {
                all[one][other] = one == other ? units[one] : 90;
            }
        }
        return all;
    }

    private static boolean names(Figure figure, String where) {
        return figure.steps().stream().map(Step::detail).anyMatch(detail -> detail.contains(where));
    }

    /** The false accept: of the whole cable the four units pass by 63.46 dB, which is how a set without 'per' still reads. */
    @Test
    void ofTheWholeCableThreeGoodUnitsHideABadOne() {
        Finding finding = cable(next(Scope.WITHIN_UNIT, 60, Particulars.NONE), within(70.1, 70.0, 57.05, 70.3))
                .only();

        assertEquals(63.46, finding.worst().value(), HALF_LAST_PLACE);
        assertEquals(Outcome.PASS, finding.outcome());
    }

    @Test
    void ofEachUnitTheBadOneFailsAndIsNamed() {
        Finding finding = cable(next(Scope.WITHIN_UNIT, 60, EACH_UNIT), within(70.1, 70.0, 57.05, 70.3))
                .only();

        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(57.05, finding.worst().value(), HALF_LAST_PLACE);
        assertTrue(names(finding.worst(), "unit 3"), finding.worst().steps().toString());
        assertEquals(4 * WITHIN_A_UNIT, finding.points());
    }

    /** The worst of four good units is told, not the mean of all. */
    @Test
    void fourGoodUnitsPassByTheWorst() {
        Finding finding = cable(next(Scope.WITHIN_UNIT, 60, EACH_UNIT), within(70.1, 61.0, 68.05, 70.3))
                .only();

        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(61.0, finding.worst().value(), HALF_LAST_PLACE);
        assertTrue(names(finding.worst(), "unit 2"), finding.worst().steps().toString());
    }

    /** One pair of units below the limit, the others well above: of all such pairs together it passes, of each it fails. */
    @ParameterizedTest
    @CsvSource({"ADJACENT_UNITS, 66, 1, 2", "NONADJACENT_UNITS, 81, 2, 4"})
    void ofEachPairOfUnitsTheBadOneFailsAndIsNamed(Scope scope, double limit, int one, int other) {
        double[][] levels = within(90, 90, 90, 90);
        for (double[] row : levels) {
            java.util.Arrays.fill(row, limit + 10);
        }
        levels[one - 1][other - 1] = limit - 2;

        Finding finding = cable(next(scope, limit, EACH_UNIT), levels).only();

        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(limit - 2, finding.worst().value(), HALF_LAST_PLACE);
        assertTrue(
                names(finding.worst(), "unit " + one) || names(finding.worst(), "units " + one),
                finding.worst().steps().toString());
        assertTrue(
                names(finding.worst(), String.valueOf(other)),
                finding.worst().steps().toString());
    }

    /** A property of pairs: the mean of each unit's own pairs. Units 1 to 3 have 50 nF, unit 4 has 54: 51 of all. */
    @Test
    void aPropertyOfPairsHasOneStatisticForEachUnit() {
        Requirement mean = RequirementBuilder.of(
                        Property.MUTUAL_CAPACITANCE, Bench.atMost(52, 0), new Domain.NoFrequency(), "nF")
                .statistic(Statistic.MEAN)
                .particulars(EACH_UNIT)
                .build();
        Bench bench = new Bench()
                .pairs(4 * PAIRS_A_UNIT)
                .units(unit(1, 2, 4), unit(2, 1, 3), unit(3, 2, 4), unit(4, 1, 3))
                .require(mean);
        for (int pair = 1; pair <= 4 * PAIRS_A_UNIT; pair++) {
            bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), unitOf(pair) == 3 ? 54 : 50, "nF");
        }

        Finding finding = bench.only();

        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(54, finding.worst().value(), HALF_LAST_PLACE);
        assertTrue(names(finding.worst(), "unit 4"), finding.worst().steps().toString());
    }

    /** A core above 25 pairs whose product states no units: nothing tells which values belong together. */
    @Test
    void withoutKnownUnitsItIsNotTested() {
        Requirement mean = RequirementBuilder.of(
                        Property.MUTUAL_CAPACITANCE, Bench.atMost(52, 0), new Domain.NoFrequency(), "nF")
                .statistic(Statistic.MEAN)
                .particulars(EACH_UNIT)
                .build();
        Bench bench = new Bench().pairs(26).require(mean);
        for (int pair = 1; pair <= 26; pair++) {
            bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), 50, "nF");
        }

        Finding finding = bench.only();

        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertEquals(
                List.of(Obstacle.Kind.UNITS_UNKNOWN),
                finding.obstacles().named().stream().map(Obstacle::kind).toList());
    }
}
