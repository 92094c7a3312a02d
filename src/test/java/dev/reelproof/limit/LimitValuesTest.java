package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.ReadingUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the values of a limit set refuse. */
class LimitValuesTest {
    private static final Bound ONE = new Bound.Constant(1, 0);

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void boundsAndSegmentsAreOfFiniteFigures(double endless) {
        refused(() -> new Bound.Constant(endless, 1));
        refused(() -> new Segment.RootPolynomial(1, 10, endless, 1, 1, 1));
        refused(() -> new Segment.RootPolynomial(1, 10, 1, endless, 1, 1));
        refused(() -> new Segment.RootPolynomial(1, 10, 1, 1, endless, 1));
        refused(() -> new Segment.RootPolynomial(1, 10, 1, 1, 1, endless));
        refused(() -> new Segment.LogSlope(1, 10, 1, endless, 1));
        refused(() -> new Segment.LogSlope(1, 10, 1, 1, endless));
        refused(() -> new Segment.Interpolated(1, 10, endless, 1, true));
        refused(() -> new Segment.Interpolated(1, 10, 1, endless, false));
        refused(() -> new GridRule(endless, 1));
        refused(() -> new GridRule(0.1, endless));
        refused(() -> new LawSpec("copper-temperature", Map.of("coefficient", endless)));
        refused(() -> new Domain.Spot(endless));
        refused(() -> new Domain.Range(1, endless));
        refused(() -> new Domain.Range(endless, 1));
    }

    @Test
    void aFigureIsPrintedWithAllItsPlaces() {
        assertEquals("9.38", new Bound.Constant(9.38, 2).formula(Double.NaN));
        assertEquals("9.3800", new Bound.Constant(9.38, 4).formula(Double.NaN));
        refused(() -> new Bound.Constant(9.38, 1));
        refused(() -> new Bound.Constant(9, -1));
    }

    @Test
    void frequenciesArePositiveAndRise() {
        refused(() -> new Domain.Spot(0));
        refused(() -> new Domain.Range(0, 10));
        refused(() -> new Domain.Range(10, 10));
    }

    @Test
    void aDomainHoldsWhatLiesInItWithinTheRoundingOfAConversion() {
        assertTrue(new Domain.Range(1, 250).holds(1));
        assertTrue(new Domain.Range(1, 250).holds(250 * (1 + 5e-10)));
        assertFalse(new Domain.Range(1, 250).holds(250.001));
        assertTrue(new Domain.Spot(0.772).holds(0.772 * (1 - 5e-10)));
        assertFalse(new Domain.Spot(0.772).holds(0.773));
        assertTrue(new Domain.NoFrequency().holds(0.001));
    }

    @Test
    void theLowerFigureIsNotAboveTheUpper() {
        assertEquals("between", Limit.between(ONE, new Bound.Constant(2, 0)).sense());
        assertEquals("between", Limit.between(ONE, ONE).sense());
        refused(() -> Limit.between(new Bound.Constant(2, 0), ONE));
    }

    @Test
    void anAllowanceCountsPairsOnceAndNeverBelowZero() {
        Source source = new Source("this test's own", true);
        Allowance.Step upTo25 = new Allowance.Step(new PairCount(6, 25), 1);
        Allowance.Step from25 = new Allowance.Step(new PairCount(25, 50), 2);
        refused(() -> new Allowance.Step(new PairCount(6, 25), -1));
        refused(() -> new Allowance(List.of(upTo25, from25), Map.of(), source));
        assertEquals(1, new Allowance(List.of(upTo25), Map.of(), source).pairsThatMayVary(25));
    }

    @Test
    void pairCountsOverlapWhereOneNumberLiesInBoth() {
        assertTrue(new PairCount(1, 4).overlaps(new PairCount(4, 6)));
        assertTrue(new PairCount(4, 6).overlaps(new PairCount(1, 4)));
        assertTrue(new PairCount(1, 10).overlaps(new PairCount(4, 6)));
        assertFalse(new PairCount(1, 3).overlaps(new PairCount(4, 6)));
        assertFalse(new PairCount(4, 6).overlaps(new PairCount(1, 3)));
    }

    @Test
    void namesAndReasonsAreNotBlank() {
        refused(() -> new LawSpec(" ", Map.of()));
        refused(() -> new LimitSet.LeftOut(" ", "not measured at final test"));
        refused(() -> new LimitSet.LeftOut("surface transfer impedance", ""));
        refused(() -> new Construction("", "four pairs", List.of()));
        refused(() -> new Construction("four-pair", " ", List.of()));
        refused(() -> new Construction.Grade(" ", Optional.empty()));
        refused(() -> RequirementBuilder.of(Property.NEXT, Limit.atLeast(ONE), new Domain.Spot(1), "dB")
                .id(" ")
                .build());
    }

    @Test
    void onlyAPercentageOfPairsCountsPairsAndByAConstantLimit() {
        ReadingUnit unit = ReadingUnit.parse("ohm/100 m");
        Bound curve = new Bound.Curve(List.of(new Segment.RootPolynomial(1, 10, 1, 0, 0, 0)));
        Particulars counted = new Particulars(
                true,
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Particulars.Each(Limit.atMost(ONE), unit)),
                Per.REEL);
        refused(() -> new Particulars.Each(Limit.atMost(curve), unit));
        refused(() -> RequirementBuilder.of(
                        Property.CONDUCTOR_RESISTANCE, Limit.atMost(ONE), new Domain.NoFrequency(), "ohm/100 m")
                .particulars(counted)
                .build());
        refused(() -> RequirementBuilder.of(
                        Property.CONDUCTOR_RESISTANCE, Limit.atLeast(ONE), new Domain.NoFrequency(), "%")
                .statistic(Statistic.PERCENT_OF_PAIRS)
                .build());
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.1})
    void aLeastRoundTripLossIsZeroOrMore(double decibels) {
        refused(() -> new Particulars(
                true, OptionalDouble.of(decibels), Optional.empty(), Optional.empty(), Optional.empty(), Per.REEL));
    }

    @Test
    void aStatisticPerUnitIsOfManyValuesAndOfNoSample() {
        Particulars perUnit = new Particulars(
                true, OptionalDouble.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Per.UNIT);
        RequirementBuilder next = RequirementBuilder.of(Property.NEXT, Limit.atLeast(ONE), new Domain.Spot(0.772), "dB")
                .particulars(perUnit);
        refused(next::build);
        assertEquals(
                Per.UNIT,
                next.statistic(Statistic.MEAN_MINUS_SIGMA).build().particulars().per());
        refused(() -> new Particulars(
                true,
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.of(new Particulars.Sampling(100, new Bound.Constant(50, 0), new Bound.Constant(53, 0))),
                Optional.empty(),
                Per.UNIT));
    }

    private static void refused(Executable making) {
        assertThrows(IllegalArgumentException.class, making);
    }
}
