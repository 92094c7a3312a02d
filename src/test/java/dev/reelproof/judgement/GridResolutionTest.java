package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.judgement.GridResolution.Unresolved;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Ripple of a known period, on grids that follow it and on grids that do not. */
class GridResolutionTest {
    private static final double LIGHT = 299.792458;
    private static final double METRES = 100;
    private static final double VELOCITY = 0.68;
    /** v/(2L), 1.02 MHz. */
    private static final double PERIOD = VELOCITY * LIGHT / (2 * METRES);

    private static final GridResolution REEL = GridResolution.ofVelocity(METRES, VELOCITY);

    private static double[] grid(double step, int points) {
        double[] grid = new double[points];
        Arrays.setAll(grid, i -> 1 + i * step);
        return grid;
    }

    private static double[] values(double[] grid, DoubleUnaryOperator at) {
        return Arrays.stream(grid).map(at).toArray();
    }

    /** Return loss of two reflections of 0.02 and 0.015, one at this end and one at a distance: 29 dB and 46 dB in turn. */
    private static DoubleUnaryOperator echo(double metres) {
        return f -> {
            double turn = 2 * Math.PI * f * 2 * metres / (VELOCITY * LIGHT);
            return -20 * Math.log10(Math.hypot(0.02 + 0.015 * Math.cos(turn), 0.015 * Math.sin(turn)));
        };
    }

    @Test
    void thePeriodIsThatOfAnEchoFromTheFarEnd() {
        // 1 km at two thirds of light: 10 µs there and back, 100 kHz
        assertEquals(0.1, GridResolution.ofDelay(1000, 5000).ripplePeriodMegahertz(), 1e-12);
        assertEquals(
                PERIOD,
                GridResolution.ofDelay(METRES, METRES / (VELOCITY * LIGHT) * 1000)
                        .ripplePeriodMegahertz(),
                1e-9);
        assertEquals(PERIOD, REEL.ripplePeriodMegahertz(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.03, 0.1, 0.2, 0.33, 0.45, 0.499})
    void aGridOfMoreThanTwoPointsAPeriodIsFollowed(double share) {
        double[] grid = grid(share * PERIOD, 400);
        assertEquals(Optional.empty(), REEL.of(grid, values(grid, echo(METRES))));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.55, 0.62, 0.71, 1.37, 1.55, 2.4})
    void aGridThatSkipsHalfAPeriodIsSaidToWhereTheRippleIs(double share) {
        double[] grid = grid(share * PERIOD, 400);
        Unresolved found = REEL.of(grid, values(grid, echo(METRES))).orElseThrow();
        assertEquals(share * PERIOD, found.stepMegahertz(), 1e-9);
        assertEquals(PERIOD, found.ripplePeriodMegahertz(), 1e-12);
        assertEquals(PERIOD / 2, found.stepNeededMegahertz(), 1e-12);
        assertTrue(found.swingDecibel() > 3, found::toString);
        assertTrue(Arrays.stream(grid).anyMatch(f -> f == found.frequencyMegahertz()));
    }

    @Test
    void anEchoFromNearbyVariesSlowlyAndTheGridFollowsIt() {
        // a period of 10 MHz from a tenth of the length, in steps of 1 MHz, which could not follow the far end
        double[] grid = grid(1, 400);
        assertEquals(Optional.empty(), REEL.of(grid, values(grid, echo(METRES / 10))));
    }

    @Test
    void whereTheLossHidesTheFarEndNothingIsSaid() {
        // the ripple falls off with the loss there and back; steps of 0.7 MHz do not follow it at the low end
        double[] grid = grid(0.7, 400);
        DoubleUnaryOperator fading = f -> 30 + 6 * Math.exp(-f / 20) * Math.sin(2 * Math.PI * f / PERIOD);
        double[] values = values(grid, fading);
        assertTrue(REEL.around(5, grid, values).isPresent());
        assertFalse(REEL.around(300, grid, values).isPresent());
        assertTrue(REEL.of(grid, values).orElseThrow().frequencyMegahertz() < 30);
    }

    @Test
    void noiseOfAFineGridAndRippleBelowHalfADecibelAreNoMatter() {
        Random random = new Random(20260302);
        double[] fine = grid(0.2 * PERIOD, 400);
        assertEquals(Optional.empty(), REEL.of(fine, values(fine, f -> 40 + 3 * random.nextGaussian())));
        double[] coarse = grid(0.7 * PERIOD, 400);
        assertEquals(
                Optional.empty(), REEL.of(coarse, values(coarse, f -> 40 + 0.24 * Math.sin(2 * Math.PI * f / PERIOD))));
    }

    @Test
    void aSmoothCurveIsFollowedHoweverCoarseTheGrid() {
        double[] grid = grid(5, 100);
        assertEquals(Optional.empty(), REEL.of(grid, values(grid, f -> 44.3 - 15 * Math.log10(f / 100))));
        assertEquals(Optional.empty(), REEL.of(grid, values(grid, f -> 20)));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 4, 5, 6, 40})
    void fewerThanFivePointsTellNothing(int points) {
        double[] grid = grid(0.6 * PERIOD, points);
        double[] values = new double[points];
        Arrays.setAll(values, i -> i % 2 == 0 ? 33 : 27);
        assertEquals(points >= 5, REEL.of(grid, values).isPresent());
    }

    @Test
    void whatWasNotMeasuredIsNoTurningPoint() {
        double[] grid = grid(0.7 * PERIOD, 60);
        double[] values = values(grid, f -> Double.NaN);
        assertEquals(Optional.empty(), REEL.of(grid, values));
    }

    @Test
    void badInputIsRefused() {
        for (double wrong : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> GridResolution.ofVelocity(wrong, 0.68));
            assertThrows(IllegalArgumentException.class, () -> GridResolution.ofDelay(wrong, 500));
            assertThrows(IllegalArgumentException.class, () -> GridResolution.ofDelay(100, wrong));
            assertThrows(IllegalArgumentException.class, () -> GridResolution.ofVelocity(100, wrong));
        }
        assertThrows(IllegalArgumentException.class, () -> GridResolution.ofVelocity(100, 1));
        assertThrows(IllegalArgumentException.class, () -> GridResolution.ofDelay(100, 333));
        double[] grid = grid(1, 10);
        assertThrows(IllegalArgumentException.class, () -> REEL.of(grid, new double[9]));
        assertThrows(IllegalArgumentException.class, () -> REEL.of(new double[] {1, 1}, new double[2]));
        assertThrows(IllegalArgumentException.class, () -> REEL.of(new double[] {1, Double.NaN}, new double[2]));
        assertThrows(IllegalArgumentException.class, () -> REEL.around(10, grid, new double[10]));
        assertThrows(IllegalArgumentException.class, () -> REEL.around(-1, grid, new double[10]));
        assertThrows(IllegalArgumentException.class, () -> new Unresolved(10, 0.4, 1, 3, 0.8));
        assertThrows(IllegalArgumentException.class, () -> new Unresolved(10, 0.6, 1, 0.4, 0.8));
        assertThrows(IllegalArgumentException.class, () -> new Unresolved(10, 0.6, 1, 3, 0.5));
    }
}
