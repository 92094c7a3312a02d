package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The near-end crosstalk length law against figures computed independently from the formula (formula from memory). */
class NearEndCrosstalkLengthValidationTest {
    private static final double MEASURED = 60;
    private static final double HALF_LAST_PLACE = 0.005;

    // Source: computed with python3 from the formula of ASTM D4566 and IEC 61156-1 (from memory); losses are the
    // category 6 limits at 1
    // and 100 MHz. Tolerance: half the last place of the figures.
    @ParameterizedTest(name = "{0} dB/100 m, {1} m: {2} dB")
    @CsvSource({"2.025, 30, -3.95", "2.025, 50, -2.11", "19.8, 30, -0.29", "19.8, 50, -0.05", "2.025, 305, 1.91"})
    void referredTo100Metres(double decibelsPer100Metres, double metres, double change) {
        MeasurementConditions conditions = Reel.of(metres, 100).withLossPerMetre(decibelsPer100Metres / 100);
        double referred = new NearEndCrosstalkLength(true).correct(MEASURED, conditions);
        assertEquals(change, referred - MEASURED, HALF_LAST_PLACE);
    }

    @Test
    void aLongerReelIsNotCreditedUnlessTheLimitSetSaysSo() {
        MeasurementConditions longReel = Reel.of(305, 100).withLossPerMetre(0.02025);
        assertEquals(MEASURED, new NearEndCrosstalkLength(false).correct(MEASURED, longReel), 0);
        assertTrue(new NearEndCrosstalkLength(true).correct(MEASURED, longReel) > MEASURED);
    }

    @Test
    void aShortReelIsCorrectedAlikeUnderBothPolicies() {
        MeasurementConditions shortReel = Reel.of(30, 100).withLossPerMetre(0.02025);
        assertEquals(
                new NearEndCrosstalkLength(true).correct(MEASURED, shortReel),
                new NearEndCrosstalkLength(false).correct(MEASURED, shortReel),
                0);
    }

    // At vanishing loss the law tends to 10 log10(L0/L): all of the cable counts alike. The next term of the series is
    // 0.5 ln(10)/5 a
    // (L0 - L) dB-wise, about 7e-11 dB here, hence the tolerance.
    @Test
    void atVanishingLossItIsTheTenLogLaw() {
        double referred = new NearEndCrosstalkLength(false)
                .correct(MEASURED, Reel.of(10, 100).withLossPerMetre(1e-12));
        assertEquals(MEASURED - 10, referred, 1e-9);
    }

    @Test
    void aShortReelNeedsTheLossOfItsPair() {
        NearEndCrosstalkLength law = new NearEndCrosstalkLength(false);
        MeasurementConditions withoutLoss = Reel.of(30, 100);
        String message = assertThrows(OutsideLawException.class, () -> law.correct(MEASURED, withoutLoss))
                .getMessage();
        assertTrue(message.contains("insertion loss") && message.contains("none is given"), message);
        for (double loss : new double[] {0, -0.001, Double.NaN, Double.POSITIVE_INFINITY}) {
            MeasurementConditions impossible = withoutLoss.withLossPerMetre(loss);
            assertThrows(OutsideLawException.class, () -> law.correct(MEASURED, impossible), "loss " + loss);
        }
    }

    @Test
    void noLossIsNeededWhereNothingIsCorrected() {
        assertEquals(MEASURED, new NearEndCrosstalkLength(false).correct(MEASURED, Reel.of(100, 100)), 0);
        assertEquals(MEASURED, new NearEndCrosstalkLength(true).correct(MEASURED, Reel.of(100, 100)), 0);
        assertEquals(MEASURED, new NearEndCrosstalkLength(false).correct(MEASURED, Reel.of(305, 100)), 0);
        MeasurementConditions longReel = Reel.of(305, 100);
        assertThrows(OutsideLawException.class, () -> new NearEndCrosstalkLength(true).correct(MEASURED, longReel));
    }
}
