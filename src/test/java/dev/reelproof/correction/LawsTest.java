package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Laws by the names that limit sets use. */
class LawsTest {

    @Test
    void namesAreThoseOfTheLimitSets() {
        assertEquals(
                List.of(
                        "copper-temperature",
                        "unscreened-loss-temperature",
                        "linear-length",
                        "square-root-length",
                        "near-end-crosstalk-length",
                        "far-end-crosstalk-length",
                        "insulation-resistance-length",
                        "half-linear-half-square-root-length",
                        "screened-loss-temperature",
                        "cable-loss-temperature",
                        "resistance-loss-temperature",
                        "insulation-resistance-temperature"),
                Laws.names());
    }

    @Test
    void eachNameGivesItsLawWithItsCoefficients() {
        assertEquals(new CopperTemperature(0.00393), Laws.named("copper-temperature", Map.of("coefficient", 0.00393)));
        assertEquals(
                new UnscreenedLossTemperature(0.004, 0.006),
                Laws.named("unscreened-loss-temperature", Map.of("to-40", 0.004, "above-40", 0.006)));
        assertEquals(new LinearLength(), Laws.named("linear-length", Map.of()));
        assertEquals(new SquareRootLength(), Laws.named("square-root-length", Map.of()));
        assertEquals(new NearEndCrosstalkLength(false), Laws.named("near-end-crosstalk-length", Map.of()));
        assertEquals(new NearEndCrosstalkLength(false), Laws.named("near-end-crosstalk-length", Map.of("longer", 0.0)));
        assertEquals(new NearEndCrosstalkLength(true), Laws.named("near-end-crosstalk-length", Map.of("longer", 1.0)));
        assertEquals(new FarEndCrosstalkLength(), Laws.named("far-end-crosstalk-length", Map.of()));
        assertEquals(new InsulationResistanceLength(), Laws.named("insulation-resistance-length", Map.of()));
        assertEquals(new HalfLinearLength(), Laws.named("half-linear-half-square-root-length", Map.of()));
        assertEquals(
                new ScreenedLossTemperature(0.002),
                Laws.named("screened-loss-temperature", Map.of("coefficient", 0.002)));
        assertEquals(
                new CableLossTemperature(0.0035, -10, 50),
                Laws.named("cable-loss-temperature", Map.of("coefficient", 0.0035, "lowest", -10.0, "highest", 50.0)));
        assertEquals(
                new ResistanceLossTemperature(0.00393),
                Laws.named("resistance-loss-temperature", Map.of("coefficient", 0.00393)));
        assertEquals(
                new InsulationResistanceTemperature(1.05, 10, 40),
                Laws.named(
                        "insulation-resistance-temperature", Map.of("factor", 1.05, "lowest", 10.0, "highest", 40.0)));
    }

    @Test
    void everyLawSaysItsNameSourceAndFormula() {
        for (String name : Laws.names()) {
            CorrectionLaw law = Laws.named(name, validParameters(name));
            assertEquals(name, law.name());
            assertTrue(law.citation().contains("(read") || law.citation().contains("from memory"), law.citation());
            assertFalse(law.formula().isBlank(), name);
        }
        assertTrue(new CopperTemperature(0.00393).formula().contains("0.00393"));
        assertTrue(new UnscreenedLossTemperature(0.004, 0.006).formula().contains("1.08 + 0.006 (t − 40)"));
    }

    private static Map<String, Double> validParameters(String name) {
        return switch (name) {
            case "copper-temperature" -> Map.of("coefficient", 0.004);
            case "unscreened-loss-temperature" -> Map.of("to-40", 0.004, "above-40", 0.006);
            case "screened-loss-temperature" -> Map.of("coefficient", 0.002);
            case "cable-loss-temperature" -> Map.of("coefficient", 0.0035, "lowest", -10.0, "highest", 50.0);
            case "resistance-loss-temperature" -> Map.of("coefficient", 0.00393);
            case "insulation-resistance-temperature" -> Map.of("factor", 1.05, "lowest", 10.0, "highest", 40.0);
            default -> Map.of();
        };
    }

    @Test
    void parametersByLaw() {
        assertEquals(List.of("coefficient"), Laws.parameters("copper-temperature"));
        assertEquals(List.of("to-40", "above-40"), Laws.parameters("unscreened-loss-temperature"));
        assertEquals(List.of("longer"), Laws.parameters("near-end-crosstalk-length"));
        assertEquals(List.of(), Laws.parameters("linear-length"));
        assertThrows(IllegalArgumentException.class, () -> Laws.parameters("copper"));
    }

    @Test
    void anUnknownLawIsNamedWithTheKnownOnes() {
        assertRefused("copper", Map.of(), "unknown correction law 'copper'", "copper-temperature, ");
    }

    @Test
    void anUnknownParameterIsNamedWithTheKnownOnes() {
        assertRefused("copper-temperature", Map.of("alpha", 0.004), "no parameter 'alpha'", "it takes coefficient");
        assertRefused("linear-length", Map.of("alpha", 0.004), "no parameter 'alpha'", "it takes none");
    }

    @Test
    void aMissingParameterIsNamedWithAnExample() {
        assertRefused("copper-temperature", Map.of(), "needs the parameter 'coefficient'", "0.00393");
        assertRefused("unscreened-loss-temperature", Map.of("to-40", 0.004), "needs the parameter 'above-40'", "0.006");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.004, 0.4, Double.NaN, Double.POSITIVE_INFINITY})
    void anImpossibleCoefficientIsNamedWithWhatWouldBeRight(double impossible) {
        assertRefused(
                "copper-temperature", Map.of("coefficient", impossible), "coefficient", "above 0 and at most 0.01");
        assertRefused(
                "unscreened-loss-temperature",
                Map.of("to-40", impossible, "above-40", 0.006),
                "to-40",
                "above 0 and at most 0.02");
        assertRefused(
                "unscreened-loss-temperature",
                Map.of("to-40", 0.004, "above-40", impossible),
                "above-40",
                "above 0 and at most 0.02");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.002, 0.2, Double.NaN, Double.POSITIVE_INFINITY})
    void anImpossibleLossCoefficientIsNamedWithWhatWouldBeRight(double impossible) {
        assertRefused(
                "screened-loss-temperature", Map.of("coefficient", impossible), "coefficient", "at most 0.02, such as");
        assertRefused(
                "cable-loss-temperature",
                Map.of("coefficient", impossible, "lowest", 0.0, "highest", 40.0),
                "coefficient",
                "at most 0.02, such as");
        assertRefused(
                "resistance-loss-temperature",
                Map.of("coefficient", impossible),
                "coefficient",
                "above 0 and at most 0.01");
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 0.95, 1.31, 2, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void anImpossibleFactorOfACompoundIsNamedWithWhatWouldBeRight(double impossible) {
        assertRefused(
                "insulation-resistance-temperature",
                Map.of("factor", impossible, "lowest", 0.0, "highest", 40.0),
                "the factor of",
                "above 1 and at most 1.3");
    }

    @Test
    void aStatedRangeMustBeOne() {
        for (double[] range :
                new double[][] {{40, 0}, {20, 20}, {-61, 40}, {0, 121}, {Double.NaN, 40}, {0, Double.NaN}}) {
            assertRefused(
                    "cable-loss-temperature",
                    Map.of("coefficient", 0.0035, "lowest", range[0], "highest", range[1]),
                    "is stated from",
                    "upwards within -60 to 120 °C");
            assertRefused(
                    "insulation-resistance-temperature",
                    Map.of("factor", 1.05, "lowest", range[0], "highest", range[1]),
                    "is stated from",
                    "upwards within -60 to 120 °C");
        }
        assertRefused(
                "cable-loss-temperature",
                Map.of("coefficient", 0.02, "lowest", -30.0, "highest", 40.0),
                "leaves no loss at -30 °C",
                "state a coefficient or a range that can be");
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 0.5, -1, Double.NaN})
    void longerIsYesOrNo(double neither) {
        assertRefused("near-end-crosstalk-length", Map.of("longer", neither), "'longer'", "must be 0");
    }

    private static void assertRefused(String name, Map<String, Double> parameters, String what, String right) {
        String message = assertThrows(IllegalArgumentException.class, () -> Laws.named(name, parameters))
                .getMessage();
        assertTrue(message.contains(what), message);
        assertTrue(message.contains(right), message);
    }

    /** A law whose name did not say that it refers to a length would have reels cut that cutting cannot mend. */
    @Test
    void theNamesSayWhichLawsAreOfLength() {
        Map<String, Double> coefficients = Map.of(
                "coefficient", 0.004, "to-40", 0.004, "above-40", 0.006, "factor", 1.1, "lowest", 0.0, "highest", 40.0);
        for (String name : Laws.names()) {
            Map<String, Double> parameters = new TreeMap<>(coefficients);
            parameters.keySet().retainAll(Laws.parameters(name));
            CorrectionLaw law = Laws.named(name, parameters);
            Temperature any = Temperature.ofCelsius(20);
            double[] corrected = DoubleStream.of(50, 80)
                    .map(metres -> law.correct(
                            40,
                            new MeasurementConditions(
                                    any, Length.ofMetres(metres), any, Length.ofMetres(100), OptionalDouble.of(0.2))))
                    .toArray();
            assertEquals(corrected[0] != corrected[1], Laws.isOfLength(name), name);
        }
    }
}
