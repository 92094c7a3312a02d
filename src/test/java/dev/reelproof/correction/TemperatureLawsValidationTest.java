package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** The temperature laws against published formulas and tables. */
class TemperatureLawsValidationTest {
    private static final CopperTemperature REGULATION = new CopperTemperature(0.0040);
    private static final CopperTemperature WIRE_TABLE = new CopperTemperature(0.00393);
    private static final UnscreenedLossTemperature UNSCREENED = new UnscreenedLossTemperature(0.004, 0.006);
    private static final double DOUBLE_PRECISION = 1e-12;

    // Source: 7 CFR 1755.403(d)(6)(ii) Table 3, loop resistance at 20 C in ohm/km (read), and (C), Rt = R20 [1 + 0.0040
    // (t - 20)] (read).
    // The column "measured" is Table 3 times the bracket, worked by hand; it is exact, hence the tolerance of doubles.
    @ParameterizedTest(name = "{1} ohm at {0} C is {2} ohm at 20 C")
    @CsvSource({
        "0,   48.576,  52.8", // 52.8 x 0.92
        "40,  57.024,  52.8", // 52.8 x 1.08
        "0,   97.796,  106.3", // 106.3 x 0.92
        "40,  183.924, 170.3", // 170.3 x 1.08
        "45,  187.33,  170.3", // 170.3 x 1.10
        "-20, 229.572, 273.3", // 273.3 x 0.84
    })
    void loopResistanceReferredTo20(double celsius, double measured, double at20) {
        assertEquals(at20, REGULATION.correct(measured, Reel.at(celsius)), at20 * DOUBLE_PRECISION);
    }

    // Source: 7 CFR 1755.403(d)(6)(iii), Rt = R68 [1 + 0.0022 (t - 68)] in Fahrenheit (read). 0.0022 per F is 0.00396
    // per C, so the
    // regulation's two forms differ by 0.00004 per degree from 20 C: that times the distance is the tolerance, and no
    // less.
    @ParameterizedTest(name = "{0} F")
    @CsvSource({"14", "32", "68", "86", "104", "122"})
    void theFahrenheitFormAgreesWithinTheRoundingOfItsCoefficient(double fahrenheit) {
        Temperature temperature = Temperature.of(fahrenheit, "°F");
        double fahrenheitFactor = 1 + 0.0022 * (fahrenheit - 68);
        double celsiusFactor = 1 / REGULATION.correct(1, Reel.at(temperature.celsius()));
        double roundingOfCoefficient = 0.00004 * Math.abs(temperature.celsius() - 20);
        assertEquals(fahrenheitFactor, celsiusFactor, roundingOfCoefficient + DOUBLE_PRECISION);
    }

    // Source: 7 CFR 1755.403(d)(6)(iii), "+/-1 % for every +/-5 F (2.8 C)" (read); printed to whole percent.
    @Test
    void fiveFahrenheitAreOnePercent() {
        double at73Fahrenheit = Temperature.of(73, "°F").celsius();
        double percent = 100 * (1 / REGULATION.correct(1, Reel.at(at73Fahrenheit)) - 1);
        assertEquals(1, percent, 0.5);
    }

    // Source: computed independently with python3 from 0.00393 (see the file's header). A value at 25, 50 or 75 C must
    // come back to the
    // one at 20 C. Tolerance: half the last place of both figures, relative to the smallest, 0.9988.
    @ParameterizedTest(name = "{0} AWG")
    @CsvFileSource(resources = "/correction/copper-wire-computed.csv", useHeadersInDisplayName = true)
    void wireTableResistancesComeBackTo20(
            int gauge, double mil, double at20, double perKilometre, double at25, double at50, double at75) {
        double tolerance = 2 * 0.00005;
        assertEquals(at20, WIRE_TABLE.correct(at25, Reel.at(25)), tolerance);
        assertEquals(at20, WIRE_TABLE.correct(at50, Reel.at(50)), tolerance);
        assertEquals(at20, WIRE_TABLE.correct(at75, Reel.at(75)), tolerance);
        assertEquals(at75, WIRE_TABLE.correct(at50, Reel.at(50, 75)), tolerance * at75 / at50);
    }

    // Source: arithmetic on the two published coefficients, 1.0800 and 1.0786 at 40 C: the choice moves a resistance by
    // 0.13 %.
    @Test
    void theTwoCopperCoefficientsDifferByMoreThanAMeterDoes() {
        double ratio = WIRE_TABLE.correct(100, Reel.at(40)) / REGULATION.correct(100, Reel.at(40));
        assertEquals(1.08 / 1.0786, ratio, DOUBLE_PRECISION);
    }

    // Source: ANSI/TIA-568 rule for unscreened cable, 0.4 % per C to 40 C and 0.6 % above (from memory; 0.4 % read in
    // the web page "LAN
    // Wiring", Table 15.2), each slope counting for its own degrees. Factors worked by hand, exact.
    @ParameterizedTest(name = "{0} C: factor {1}")
    @CsvSource({"-20, 0.84", "0, 0.92", "20, 1", "31, 1.044", "40, 1.08", "50, 1.14", "60, 1.20"})
    void unscreenedLossFactor(double celsius, double factor) {
        assertEquals(20, UNSCREENED.correct(20 * factor, Reel.at(celsius)), 20 * DOUBLE_PRECISION);
    }

    // Source: ANSI/TIA-568 rule for screened cable, 0.2 % per C (from memory). Factors worked by hand, exact.
    @ParameterizedTest(name = "{0} C: factor {1}")
    @CsvSource({"-20, 0.92", "20, 1", "31, 1.022", "40, 1.04", "60, 1.08"})
    void screenedLossFactor(double celsius, double factor) {
        assertEquals(
                20, new ScreenedLossTemperature(0.002).correct(20 * factor, Reel.at(celsius)), 20 * DOUBLE_PRECISION);
    }

    // A cable's own 0.35 % per C, stated from -10 to 50 C: a coefficient of this test. Factors worked by hand, exact.
    @ParameterizedTest(name = "{0} C: factor {1}")
    @CsvSource({"-10, 0.895", "20, 1", "30, 1.035", "50, 1.105"})
    void aCablesOwnLossFactor(double celsius, double factor) {
        assertEquals(
                20,
                new CableLossTemperature(0.0035, -10, 50).correct(20 * factor, Reel.at(celsius)),
                20 * DOUBLE_PRECISION);
    }

    // Source: the resistances of the wire table at 20 and 50 C, 25.6682 and 28.6945 ohm/kft (computed independently,
    // see
    // copper-wire-computed.csv): the loss goes by the square root of their ratio. Tolerance: half their last places.
    @Test
    void lossByTheSquareRootOfResistance() {
        double ratio = Math.sqrt(28.6945 / 25.6682);
        assertEquals(10, new ResistanceLossTemperature(0.00393).correct(10 * ratio, Reel.at(50)), 10 * 4e-6);
    }

    // Arithmetic: a compound that loses 5 % for each degree has 1.05^10 = 1.628894627 times as much at 20 C as at 30 C.
    @Test
    void insulationResistanceByItsCompoundsFactor() {
        InsulationResistanceTemperature law = new InsulationResistanceTemperature(1.05, 10, 40);
        assertEquals(1628.894627, law.correct(1000, Reel.at(30)), 1e-6);
        assertEquals(1000 / 1.628894627, law.correct(1000, Reel.at(20, 30)), 1e-6);
    }

    @Test
    void unscreenedLossIsContinuousAt40() {
        double justBelow = UNSCREENED.correct(20, Reel.at(Math.nextDown(40.0)));
        double at = UNSCREENED.correct(20, Reel.at(40));
        double justAbove = UNSCREENED.correct(20, Reel.at(Math.nextUp(40.0)));
        assertEquals(at, justBelow, 20 * DOUBLE_PRECISION);
        assertEquals(at, justAbove, 20 * DOUBLE_PRECISION);
        double slopeBelow = 20 / UNSCREENED.correct(20, Reel.at(40)) - 20 / UNSCREENED.correct(20, Reel.at(39));
        double slopeAbove = 20 / UNSCREENED.correct(20, Reel.at(41)) - 20 / UNSCREENED.correct(20, Reel.at(40));
        assertEquals(0.004, slopeBelow, DOUBLE_PRECISION);
        assertEquals(0.006, slopeAbove, DOUBLE_PRECISION);
    }

    @ParameterizedTest(name = "{0}: {1} to {2}")
    @CsvSource({
        "copper, -40, 100",
        "unscreened, -20, 60",
        "screened, -20, 60",
        "cable, -10, 50",
        "resistance, -40, 100",
        "compound, 10, 40"
    })
    void theEndsOfTheRangeAreCoveredAndNothingBeyond(String which, double lowest, double highest) {
        CorrectionLaw law =
                switch (which) {
                    case "copper" -> WIRE_TABLE;
                    case "unscreened" -> UNSCREENED;
                    case "screened" -> new ScreenedLossTemperature(0.002);
                    case "cable" -> new CableLossTemperature(0.0035, -10, 50);
                    case "resistance" -> new ResistanceLossTemperature(0.00393);
                    default -> new InsulationResistanceTemperature(1.05, 10, 40);
                };
        for (double end : new double[] {lowest, highest}) {
            assertDoesNotThrow(() -> law.requireCovers(Temperature.ofCelsius(end)));
            assertTrue(Double.isFinite(law.correct(1, Reel.at(end))));
        }
        for (double beyond : new double[] {Math.nextDown(lowest), lowest - 0.5, Math.nextUp(highest), highest + 0.5}) {
            assertRefused(law, beyond, lowest, highest);
        }
    }

    private static void assertRefused(CorrectionLaw law, double celsius, double lowest, double highest) {
        Temperature temperature = Temperature.ofCelsius(celsius);
        String range = PlainDecimal.of(lowest) + " to " + PlainDecimal.of(highest) + " °C";
        for (OutsideLawException refusal : new OutsideLawException[] {
            assertThrows(OutsideLawException.class, () -> law.requireCovers(temperature)),
            assertThrows(OutsideLawException.class, () -> law.correct(1, Reel.at(celsius))),
            assertThrows(OutsideLawException.class, () -> law.correct(1, Reel.at(20, celsius)))
        }) {
            assertTrue(refusal.getMessage().contains(PlainDecimal.of(celsius) + " °C"), refusal.getMessage());
            assertTrue(refusal.getMessage().contains(range), refusal.getMessage());
        }
        assertTrue(assertThrows(OutsideLawException.class, () -> law.correct(1, Reel.at(20, celsius)))
                .getMessage()
                .contains("reference temperature"));
    }

    @Test
    void lengthLawsHoldAtAnyTemperature() {
        for (CorrectionLaw law : new CorrectionLaw[] {
            new LinearLength(),
            new SquareRootLength(),
            new NearEndCrosstalkLength(false),
            new FarEndCrosstalkLength(),
            new HalfLinearLength(),
            new InsulationResistanceLength()
        }) {
            assertDoesNotThrow(() -> law.requireCovers(Temperature.ofCelsius(-80)), law.name());
            assertEquals(7.5, law.correct(7.5, Reel.at(150)), 0, law.name());
        }
    }
}
