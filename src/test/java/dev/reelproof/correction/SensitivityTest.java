package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

/** The laws' own derivatives against central differences of the laws. */
class SensitivityTest {
    // A central difference with a relative step h errs by h²/6 of the third derivative and by about 1e-16/h of the
    // value; at
    // h = 1e-5 both lie near 1e-11 of the value, times what a law's curvature adds.
    private static final double RELATIVE_STEP = 1e-5;
    private static final double RELATIVE_TOLERANCE = 1e-7;

    @Provide
    Arbitrary<CorrectionLaw> laws() {
        return Arbitraries.of(
                new CopperTemperature(0.00393),
                new UnscreenedLossTemperature(0.004, 0.006),
                new ScreenedLossTemperature(0.002),
                new CableLossTemperature(0.0035, -40, 80),
                new ResistanceLossTemperature(0.00393),
                new InsulationResistanceTemperature(1.06, -40, 80),
                new HalfLinearLength(),
                new LinearLength(),
                new SquareRootLength(),
                new NearEndCrosstalkLength(true),
                new NearEndCrosstalkLength(false),
                new FarEndCrosstalkLength(),
                new InsulationResistanceLength());
    }

    @Property
    void everyDerivativeIsThatOfTheLaw(
            @ForAll("laws") CorrectionLaw law,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(6) double value,
            @ForAll @DoubleRange(min = -19, max = 59) @Scale(6) double celsius,
            @ForAll @DoubleRange(min = 1, max = 5_000) @Scale(6) double metres,
            @ForAll @DoubleRange(min = 1, max = 5_000) @Scale(6) double referenceMetres,
            @ForAll @DoubleRange(min = 1e-3, max = 0.5) @Scale(6) double lossPerMetre) {
        // The kinks, where no two-sided derivative exists, have tests of their own.
        double t = Math.abs(celsius - 40) < 0.01 ? 39 : celsius;
        double length = Math.abs(metres / referenceMetres - 1) < 0.001 ? 0.9 * referenceMetres : metres;
        Sensitivity found = law.sensitivity(value, conditions(t, length, referenceMetres, lossPerMetre));
        agrees(found.value(), value, x -> law.correct(x, conditions(t, length, referenceMetres, lossPerMetre)));
        agrees(
                found.perDegree(),
                t == 0 ? 1 : t,
                shifted(t, x -> law.correct(value, conditions(x, length, referenceMetres, lossPerMetre))));
        agrees(found.perMetre(), length, x -> law.correct(value, conditions(t, x, referenceMetres, lossPerMetre)));
        agrees(
                found.perLossPerMetre(),
                lossPerMetre,
                x -> law.correct(value, conditions(t, length, referenceMetres, x)));
    }

    /** A temperature of 0 °C has no relative step: it is taken as seen from 1 °C. */
    private static DoubleUnaryOperator shifted(double t, DoubleUnaryOperator law) {
        return t == 0 ? x -> law.applyAsDouble(x - 1) : law;
    }

    private static void agrees(double derivative, double at, DoubleUnaryOperator law) {
        double step = Math.abs(at) * RELATIVE_STEP;
        double difference = (law.applyAsDouble(at + step) - law.applyAsDouble(at - step)) / (2 * step);
        double scale = Math.max(Math.abs(derivative), Math.abs(law.applyAsDouble(at) / at));
        assertEquals(difference, derivative, RELATIVE_TOLERANCE * scale);
    }

    /** A law by the factor that its temperature coefficients are multiplied by. */
    private record Family(String name, DoubleFunction<CorrectionLaw> scaled) {}

    @Provide
    Arbitrary<Family> families() {
        return Arbitraries.of(
                new Family("copper", by -> new CopperTemperature(0.00393 * by)),
                new Family("unscreened", by -> new UnscreenedLossTemperature(0.004 * by, 0.006 * by)),
                new Family("screened", by -> new ScreenedLossTemperature(0.002 * by)),
                new Family("of a cable", by -> new CableLossTemperature(0.0035 * by, -40, 80)),
                new Family("by resistance", by -> new ResistanceLossTemperature(0.00393 * by)),
                // 1.06^by: the coefficient is the logarithm of the factor for 1 °C.
                new Family(
                        "insulation",
                        by -> new InsulationResistanceTemperature(Math.exp(by * Math.log(1.06)), -40, 80)));
    }

    @Property
    void theDerivativeByTheCoefficientIsThatOfTheLaw(
            @ForAll("families") Family family,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(6) double value,
            @ForAll @DoubleRange(min = -19, max = 59) @Scale(6) double celsius,
            @ForAll @DoubleRange(min = 15, max = 59) @Scale(6) double referenceCelsius) {
        MeasurementConditions conditions = new MeasurementConditions(
                Temperature.ofCelsius(celsius),
                Length.ofMetres(305),
                Temperature.ofCelsius(referenceCelsius),
                Length.ofMetres(100),
                OptionalDouble.empty());
        double found = family.scaled().apply(1).sensitivity(value, conditions).perCoefficient();
        double more = family.scaled().apply(1 + RELATIVE_STEP).correct(value, conditions);
        double less = family.scaled().apply(1 - RELATIVE_STEP).correct(value, conditions);
        // Against the corrected value itself, since the derivative is small near the reference temperature.
        assertEquals((more - less) / (2 * RELATIVE_STEP), found, RELATIVE_TOLERANCE * Math.max(more, Math.abs(found)));
    }

    @Property
    void atTheReferenceTemperatureTheCoefficientDoesNotMatter(
            @ForAll("laws") CorrectionLaw law,
            @ForAll @DoubleRange(min = -19, max = 59) @Scale(6) double celsius,
            @ForAll @DoubleRange(min = 1, max = 5_000) @Scale(6) double metres) {
        MeasurementConditions conditions = new MeasurementConditions(
                Temperature.ofCelsius(celsius),
                Length.ofMetres(metres),
                Temperature.ofCelsius(celsius),
                Length.ofMetres(100),
                OptionalDouble.of(0.02));
        assertEquals(0, law.sensitivity(40, conditions).perCoefficient());
    }

    @Test
    void aLawWithoutATemperatureCoefficientHasNoDerivativeByOne() {
        for (CorrectionLaw law : List.of(
                new LinearLength(),
                new SquareRootLength(),
                new HalfLinearLength(),
                new InsulationResistanceLength(),
                new FarEndCrosstalkLength(),
                new NearEndCrosstalkLength(true))) {
            assertEquals(0, law.sensitivity(40, conditions(31, 305, 100, 0.02)).perCoefficient(), law.name());
        }
    }

    @Test
    void twoLawsInARowFollowTheChainRule() {
        MeasurementConditions warmAndLong = conditions(30, 305, 100, 0.02);
        CorrectionLaw temperature = new CopperTemperature(0.00393);
        CorrectionLaw length = new LinearLength();
        double between = temperature.correct(28.6, warmAndLong);
        Sensitivity both = temperature.sensitivity(28.6, warmAndLong).then(length.sensitivity(between, warmAndLong));
        DoubleUnaryOperator byTemperature = celsius -> {
            MeasurementConditions at = conditions(celsius, 305, 100, 0.02);
            return length.correct(temperature.correct(28.6, at), at);
        };
        agrees(both.perDegree(), 30, byTemperature);
        agrees(both.perMetre(), 305, metres -> {
            MeasurementConditions at = conditions(30, metres, 100, 0.02);
            return length.correct(temperature.correct(28.6, at), at);
        });
        assertEquals(100.0 / 305 / (1 + 0.00393 * 10), both.value(), 1e-15);
        // R0 = 28.6 · 100/305 / (1 + 10 α): ∂R0/∂ln α = −R0 · 10 α/(1 + 10 α)
        double corrected = 28.6 * 100 / 305 / 1.0393;
        assertEquals(-corrected * 0.0393 / 1.0393, both.perCoefficient(), 1e-14);
    }

    @Test
    void onTheStepOfTheLossLawTheSteeperSlopeCounts() {
        CorrectionLaw law = new UnscreenedLossTemperature(0.004, 0.006);
        double below = law.sensitivity(20, conditions(39.999, 100, 100, 0.02)).perDegree();
        double on = law.sensitivity(20, conditions(40, 100, 100, 0.02)).perDegree();
        double above = law.sensitivity(20, conditions(40.001, 100, 100, 0.02)).perDegree();
        // A thousandth of a degree changes the slope by 1e-5 of itself, 1e-6.
        assertEquals(above, on, 2e-6);
        assertTrue(Math.abs(on) > Math.abs(below) * 1.4);
    }

    @Test
    void whereTheNearEndLawLeavesTheValueItAddsNothing() {
        CorrectionLaw shorterOnly = new NearEndCrosstalkLength(false);
        assertEquals(Sensitivity.UNCHANGED, shorterOnly.sensitivity(40, Reel.of(100, 100)));
        assertEquals(Sensitivity.UNCHANGED, shorterOnly.sensitivity(40, Reel.of(305, 100)));
        assertThrows(OutsideLawException.class, () -> shorterOnly.sensitivity(40, Reel.of(50, 100)));
    }

    @Test
    void outsideItsRangeALawHasNoDerivative() {
        CorrectionLaw law = new UnscreenedLossTemperature(0.004, 0.006);
        assertThrows(OutsideLawException.class, () -> law.sensitivity(20, Reel.at(61)));
        assertThrows(OutsideLawException.class, () -> new CopperTemperature(0.00393).sensitivity(20, Reel.at(-41)));
    }

    private static MeasurementConditions conditions(
            double celsius, double metres, double referenceMetres, double lossPerMetre) {
        return new MeasurementConditions(
                Temperature.ofCelsius(celsius),
                Length.ofMetres(metres),
                Temperature.ofCelsius(20),
                Length.ofMetres(referenceMetres),
                OptionalDouble.of(lossPerMetre));
    }
}
