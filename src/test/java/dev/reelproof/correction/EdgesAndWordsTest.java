package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where the laws end, and what they say to people. */
class EdgesAndWordsTest {

    @Test
    void theGreatestCoefficientIsStillTaken() {
        assertEquals(0.01, new CopperTemperature(0.01).coefficient());
        assertEquals(0.02, new UnscreenedLossTemperature(0.02, 0.006).to40());
        assertEquals(0.02, new UnscreenedLossTemperature(0.004, 0.02).above40());
    }

    // Source: ASTM B258 (from memory): 40 AWG is 3.145 mil = 0.07988 mm. Tolerance: half the last place of the mil
    // figure.
    @Test
    void theThinnestGaugeIsAWire() {
        assertEquals(3.145, CopperWire.ofGauge(40).diameterMillimetres() / 0.0254, 0.0005);
    }

    @Test
    void anImpossibleMassIsNamedAsAMass() {
        CopperWire rod = new CopperWire(8);
        String message = assertThrows(IllegalArgumentException.class, () -> rod.lengthOfMass(0))
                .getMessage();
        assertEquals("a mass of copper is 0 kg; it must be above 0 and finite", message);
    }

    @Test
    void theNearEndLawSaysAtWhichLengthsItCorrects() {
        String shorterOnly =
                Laws.named("near-end-crosstalk-length", Map.of("longer", 0.0)).formula();
        String anyLength =
                Laws.named("near-end-crosstalk-length", Map.of("longer", 1.0)).formula();
        assertTrue(shorterOnly.endsWith("where L < L0"), shorterOnly);
        assertTrue(anyLength.endsWith("at any length"), anyLength);
    }

    @ParameterizedTest
    @CsvSource({"MINIMUM, ASTM D4566", "SUM, IEC 61156-1", "MEAN, no source"})
    void eachDenominatorSaysWhereItComesFrom(UnbalanceDenominator denominator, String source) {
        assertTrue(denominator.citation().contains(source), denominator.citation());
    }

    @Test
    void tooFewValuesAreCounted() {
        assertEquals(
                "a power sum needs at least 1 value; there are 0",
                assertThrows(IllegalArgumentException.class, PowerSum::of).getMessage());
        assertEquals(
                "a delay skew needs at least 2 values; there are 1",
                assertThrows(IllegalArgumentException.class, () -> DelaySkew.of(530))
                        .getMessage());
    }

    @ParameterizedTest
    @CsvSource({"0, 9", "9, 0", "NaN, 9", "9, Infinity"})
    void whatIsNoResistanceHasNoDerivativeAndNoDirection(double one, double other) {
        assertThrows(IllegalArgumentException.class, () -> UnbalanceDenominator.SUM.gradient(one, other));
        assertThrows(IllegalArgumentException.class, () -> PairResistance.parallelGradient(one, other));
        assertThrows(IllegalArgumentException.class, () -> UnbalanceDirection.percent(one, other));
    }

    @Test
    void whatTwoLawsOweToOneSourceAddsUp() {
        Sensitivity first = new Sensitivity(2, 11, 13, 3, 23);
        Sensitivity second = new Sensitivity(5, 17, 19, 7, 29);
        assertEquals(new Sensitivity(10, 72, 84, 22, 144), first.then(second));
    }

    @Test
    void theEndsOfWhatALimitSetMayStateAreStillTaken() {
        double greatest = InsulationResistanceTemperature.GREATEST_FACTOR;
        assertEquals(greatest, new InsulationResistanceTemperature(greatest, -60, 120).factor());
    }
}
