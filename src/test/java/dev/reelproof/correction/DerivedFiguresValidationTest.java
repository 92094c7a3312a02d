package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Unbalance, power sum, skew and parallel resistance against worked examples. */
class DerivedFiguresValidationTest {
    private static final double[] IMPOSSIBLE_RESISTANCES = {0, -1, Double.NaN, Double.POSITIVE_INFINITY};

    // Source: definitions of ASTM D4566 and IEC 61156-1 (from memory), figures worked independently: 0.40/9.00,
    // 0.40/18.40 and 0.40/9.20.
    // Tolerance: half the last place of the figures.
    @ParameterizedTest(name = "9.40 and 9.00 ohm over the {0}: {1} %")
    @CsvSource({"minimum, 4.444", "sum, 2.174", "mean, 4.348"})
    void theSamePairUnderThreeDefinitions(String denominator, double percent) {
        UnbalanceDenominator definition = UnbalanceDenominator.named(denominator);
        assertEquals(percent, definition.percent(9.40, 9.00), 0.0005);
        assertEquals(definition.percent(9.40, 9.00), definition.percent(9.00, 9.40), 0);
        assertEquals(0, definition.percent(9.2, 9.2), 0);
        assertEquals(denominator, definition.word());
    }

    // Source: limits 5 % over the minimum and 2 % over the sum (TIA and IEC 61156-5, from memory): one pair, two
    // verdicts.
    @Test
    void theSamePairPassesOneStandardAndFailsTheOther() {
        assertTrue(UnbalanceDenominator.MINIMUM.percent(9.40, 9.00) < 5);
        assertTrue(UnbalanceDenominator.SUM.percent(9.40, 9.00) > 2);
    }

    @Test
    void refusesAnUnknownDenominatorAndAnImpossibleResistance() {
        String message = assertThrows(IllegalArgumentException.class, () -> UnbalanceDenominator.named("maximum"))
                .getMessage();
        assertTrue(message.contains("'maximum'") && message.contains("minimum, sum, mean"), message);
        for (double ohms : IMPOSSIBLE_RESISTANCES) {
            assertThrows(IllegalArgumentException.class, () -> UnbalanceDenominator.SUM.percent(ohms, 9));
            assertThrows(IllegalArgumentException.class, () -> UnbalanceDenominator.SUM.percent(9, ohms));
            assertThrows(IllegalArgumentException.class, () -> PairResistance.parallel(ohms, 9));
            assertThrows(IllegalArgumentException.class, () -> PairResistance.parallel(9, ohms));
        }
    }

    // Source: arithmetic, 9.40 x 9.00 / 18.40 = 4.59783 and 9.6 x 9.2 / 18.8 = 4.69787; over the sum 0.10005 / 9.29570
    // = 1.0763 %.
    // Tolerance: half the last place of the figures.
    @Test
    void unbalanceBetweenPairsComparesTheConductorsInParallel() {
        double first = PairResistance.parallel(9.40, 9.00);
        double second = PairResistance.parallel(9.60, 9.20);
        assertEquals(4.59783, first, 0.000005);
        assertEquals(4.69787, second, 0.000005);
        assertEquals(1.0763, UnbalanceDenominator.SUM.percent(first, second), 0.00005);
        assertEquals(4.5, PairResistance.parallel(9, 9), 0);
    }

    // Source: computed independently with python3 from ASTM D4566's definition (from memory). Tolerance: half the last
    // place.
    @Test
    void powerSums() {
        assertEquals(42.760, PowerSum.of(45.2, 47.8, 52.1), 0.0005);
        assertEquals(39.529, PowerSum.of(44.3, 44.3, 44.3), 0.0005);
    }

    // Source: the two limits of category 6 at 100 MHz, 44.3 and 42.3 dB (first read in a secondary source, second from
    // memory): a cable
    // whose every combination is on the NEXT limit fails the power-sum limit by 2.77 dB, so neither test stands for the
    // other.
    @Test
    void everyCombinationOnTheNextLimitFailsThePowerSumLimit() {
        assertEquals(-2.77, PowerSum.of(44.3, 44.3, 44.3) - 42.3, 0.005);
    }

    @Test
    void aPowerSumOfVeryLargeLossesDoesNotUnderflow() {
        assertEquals(10_000 - 10 * Math.log10(2), PowerSum.of(10_000, 10_000), 1e-9);
    }

    @Test
    void skewIsSlowestLessFastest() {
        assertEquals(18.5, DelaySkew.of(530.25, 541.0, 522.5, 535.75), 0);
        assertEquals(0, DelaySkew.of(530.25, 530.25), 0);
    }

    @Test
    void refusesTooFewOrNotFinite() {
        assertThrows(IllegalArgumentException.class, PowerSum::of);
        assertThrows(IllegalArgumentException.class, () -> PowerSum.of(45, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> PowerSum.of(45, Double.POSITIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> DelaySkew.of(500));
        assertThrows(IllegalArgumentException.class, () -> DelaySkew.of(500, Double.NaN));
    }
}
