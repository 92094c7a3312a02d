package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.OptionalDouble;
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
