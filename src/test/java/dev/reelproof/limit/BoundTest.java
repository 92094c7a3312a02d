package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.file.LimitSetException;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Limits as values: where they hold, and how they are printed. */
class BoundTest {
    private static final Segment RISING = new Segment.LogSlope(1, 10, 1, 20, 5);
    private static final Segment FALLING = new Segment.LogSlope(10, 100, 20, 25, -7);
    private static final Bound.Curve RETURN_LOSS = new Bound.Curve(List.of(RISING, FALLING));

    // Worked by hand: 2 √f + 0.05 f + 0.3/√f + 1 at 4 MHz is 4 + 0.2 + 0.15 + 1.
    @Test
    void aRootPolynomialIsTheSumOfItsParts() {
        assertEquals(5.35, new Segment.RootPolynomial(1, 100, 1, 2, 0.05, 0.3).at(4), 1e-15);
    }

    // Worked by hand: two decades above and one below the frequency of the value.
    @Test
    void aSlopeCountsDecadesFromItsFrequency() {
        assertEquals(30, new Segment.LogSlope(0.1, 1000, 1, 60, -15).at(100), 1e-13);
        assertEquals(75, new Segment.LogSlope(0.1, 1000, 1, 60, -15).at(0.1), 1e-13);
    }

    @Test
    void formulasArePrintedAsAStandardPrintsThem() {
        assertEquals("1.82·√f + 0.0091·f + 0.25/√f", new Segment.RootPolynomial(1, 9, 0, 1.82, 0.0091, 0.25).formula());
        assertEquals("534 + 36/√f", new Segment.RootPolynomial(1, 9, 534, 0, 0, 36).formula());
        assertEquals("−2 − 0.5·f", new Segment.RootPolynomial(1, 9, -2, 0, -0.5, 0).formula());
        assertEquals("0", new Segment.RootPolynomial(1, 9, 0, 0, 0, 0).formula());
        assertEquals("20 + 5·log10(f)", RISING.formula());
        assertEquals("25 − 7·log10(f/20)", FALLING.formula());
        assertEquals("93.80", new Bound.Constant(93.8, 2).formula(1));
    }

    @Test
    void aFrequencyWhereTwoSegmentsJoinBelongsToTheLower() {
        assertEquals("20 + 5·log10(f)", RETURN_LOSS.formula(10));
        assertEquals(25, RETURN_LOSS.at(10), 1e-13);
        assertEquals("25 − 7·log10(f/20)", RETURN_LOSS.formula(Math.nextUp(10.0)));
    }

    // A last frequency that went through a conversion of units may lie a hair above the curve's own.
    @Test
    void beyondItsLastFrequencyTheLastSegmentGoesOn() {
        assertEquals(25 - 7 * Math.log10(5.00000001), RETURN_LOSS.at(100.0000002), 1e-13);
        assertEquals("25 − 7·log10(f/20)", RETURN_LOSS.formula(100.0000002));
    }

    @Test
    void aCurveIsDescribedSegmentBySegment() {
        assertEquals("20 + 5·log10(f) (1 to 10 MHz); 25 − 7·log10(f/20) (10 to 100 MHz)", RETURN_LOSS.describe());
        assertEquals(1, RETURN_LOSS.from());
        assertEquals(100, RETURN_LOSS.to());
        assertEquals(OptionalInt.empty(), RETURN_LOSS.decimals());
    }

    @Test
    void segmentsMustJoin() {
        assertThrows(IllegalArgumentException.class, () -> new Bound.Curve(List.of()));
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> new Bound.Curve(List.of(RISING, new Segment.LogSlope(11, 100, 20, 25, -7))))
                .getMessage();
        assertEquals(
                "segment 2 begins at 11.0 MHz but the one before ends at 10.0 MHz; segments must join without gap or overlap",
                message);
    }

    @ParameterizedTest
    @CsvSource({"0, 10", "-1, 10", "10, 10", "10, 5", "1, Infinity", "NaN, 10", "1, NaN"})
    void aSegmentRunsUpwardsFromAPositiveFrequency(double from, double to) {
        assertThrows(IllegalArgumentException.class, () -> new Segment.RootPolynomial(from, to, 1, 0, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new Segment.LogSlope(from, to, 1, 60, -15));
    }

    @ParameterizedTest
    @CsvSource({"0", "-1", "NaN", "Infinity"})
    void aSlopeNeedsAPositiveFrequency(double at) {
        assertThrows(IllegalArgumentException.class, () -> new Segment.LogSlope(1, 10, at, 60, -15));
    }

    @Test
    void aLimitHasABoundAndSaysItsSense() {
        assertThrows(IllegalArgumentException.class, () -> new Limit(Optional.empty(), Optional.empty()));
        assertEquals("at-most", Limit.atMost(RETURN_LOSS).sense());
        assertEquals("at-least", Limit.atLeast(RETURN_LOSS).sense());
        assertEquals("between", Limit.between(RETURN_LOSS, RETURN_LOSS).sense());
    }

    @Test
    void aRangeOfPairsHoldsItsEnds() {
        PairCount range = new PairCount(12, 25);
        assertFalse(range.holds(11));
        assertTrue(range.holds(12));
        assertTrue(range.holds(25));
        assertFalse(range.holds(26));
        assertTrue(new PairCount(1, 1).holds(1));
        assertThrows(IllegalArgumentException.class, () -> new PairCount(0, 4));
        assertThrows(IllegalArgumentException.class, () -> new PairCount(4, 3));
    }

    @Test
    void aTemperatureWindowHoldsItsEnds() {
        TemperatureWindow window = new TemperatureWindow(Temperature.ofCelsius(20), 1);
        for (double held : new double[] {19, 20, 21}) {
            assertTrue(window.holds(Temperature.ofCelsius(held)));
        }
        for (double beyond : new double[] {18.9, 21.1}) {
            assertFalse(window.holds(Temperature.ofCelsius(beyond)));
        }
        assertTrue(new TemperatureWindow(Temperature.ofCelsius(20), 0).holds(Temperature.ofCelsius(20)));
        for (double impossible : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(
                    IllegalArgumentException.class, () -> new TemperatureWindow(Temperature.ofCelsius(20), impossible));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 2", "0.025, 0", "NaN, 2", "0.025, NaN", "-0.025, 2", "0.025, -2"})
    void theWidestStepIsPositive(double decades, double megahertz) {
        assertThrows(IllegalArgumentException.class, () -> new GridRule(decades, megahertz));
    }

    @Test
    void aFigureHasASourceThatSaysHowItWasTaken() {
        assertEquals("a document (read)", new Source("a document", true).words());
        assertEquals("a document (from memory)", new Source("a document", false).words());
        assertThrows(IllegalArgumentException.class, () -> new Source(" ", true));
        assertThrows(IllegalArgumentException.class, () -> new Source(null, true));
    }

    @Test
    void aRefusalListsEveryFaultOnALineOfItsOwn() {
        LimitSetException refused = new LimitSetException(List.of(
                new LimitSetException.Fault("a.yaml:3 /revision", "'0' must be 1 or more"),
                new LimitSetException.Fault("a.yaml:9", "the key 'read' is missing")));
        assertEquals(
                List.of("a.yaml:3 /revision: '0' must be 1 or more", "a.yaml:9: the key 'read' is missing"),
                refused.getMessage().lines().toList());
    }

    // Worked by hand: 100 MHz lies halfway between 10 and 1000 MHz over the logarithm, 505 MHz over the frequency.
    @Test
    void aLineBetweenTwoTabulatedPointsIsStraightTheWayItSays() {
        assertEquals(30, new Segment.Interpolated(10, 1000, 20, 40, true).at(100), 1e-13);
        assertEquals(30, new Segment.Interpolated(10, 1000, 20, 40, false).at(505), 1e-13);
        assertThrows(IllegalArgumentException.class, () -> new Segment.Interpolated(10, 10, 20, 40, true));
    }

    @Test
    void onlyAboveItsUpperEndDoesATemperatureWindowLieBelow() {
        TemperatureWindow window = new TemperatureWindow(Temperature.ofCelsius(20), 1);
        assertFalse(window.isBelow(Temperature.ofCelsius(18.9)));
        assertFalse(window.isBelow(Temperature.ofCelsius(21)));
        assertTrue(window.isBelow(Temperature.ofCelsius(21.1)));
    }

    @Test
    void aSingleFigureHoldsAtEveryFrequency() {
        assertEquals(93.8, new Bound.Constant(93.8, 1).at(1));
        assertEquals(93.8, new Bound.Constant(93.8, 1).at(Double.NaN));
    }

    @Test
    void aSampleIsOfOnePairOrMoreAndItsFiguresMayBeOne() {
        Bound.Constant fifty = new Bound.Constant(50, 0);
        assertEquals(1, new Particulars.Sampling(1, fifty, fifty).pairs());
        assertThrows(IllegalArgumentException.class, () -> new Particulars.Sampling(0, fifty, fifty));
        assertThrows(
                IllegalArgumentException.class, () -> new Particulars.Sampling(1, fifty, new Bound.Constant(49, 0)));
    }

    @Test
    void theLengthToRejectByMayBeTheLengthToJudgeBy() {
        Length least = Length.ofMetres(300);
        assertEquals(least, new Particulars.TestedLength(least, least).leastToReject());
        assertThrows(IllegalArgumentException.class, () -> new Particulars.TestedLength(least, Length.ofMetres(299)));
    }
}
