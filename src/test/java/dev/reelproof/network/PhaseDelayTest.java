package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Phases that are known in closed form, and the delays that must come of them. */
class PhaseDelayTest {
    private static final double LIGHT = 0.299792458;
    private static final double TURN = 2 * Math.PI;

    /** A phase of some 1000 rad has 2e-13 rad of rounding, which is 3e-11 ns at 1 MHz; unwrapping adds a few such steps. */
    private static final double ROUNDING = 1e-9;

    private static double[] linear(double from, double step, int count) {
        double[] grid = new double[count];
        Arrays.setAll(grid, i -> from + i * step);
        return grid;
    }

    /** The file has one frequency before those that count, so that its lines are not the indices; line = 10 + index. */
    private static PhaseDelay.Found found(
            double[] megahertz, DoubleUnaryOperator radian, DoubleUnaryOperator neper, CableSpan span) {
        int count = megahertz.length;
        double[] all = new double[count + 1];
        System.arraycopy(megahertz, 0, all, 1, count);
        int[] lines = new int[count + 1];
        Arrays.setAll(lines, i -> 10 + i);
        NetworkData data = new NetworkData(
                "x.s4p",
                "made",
                1,
                all,
                lines,
                new double[count + 1][2],
                new double[] {50},
                Optional.empty(),
                List.of());
        double[] re = new double[count];
        double[] im = new double[count];
        for (int i = 0; i < count; i++) {
            double size = Math.exp(-neper.applyAsDouble(megahertz[i]));
            re[i] = size * Math.cos(radian.applyAsDouble(megahertz[i]));
            im[i] = size * Math.sin(radian.applyAsDouble(megahertz[i]));
        }
        return PhaseDelay.of("pair 7", data, 1, re, im, span);
    }

    private static PhaseDelay.Found lossless(double[] megahertz, double nanoseconds, CableSpan span) {
        return found(megahertz, f -> -TURN * f * nanoseconds / 1000, f -> 0, span);
    }

    private static double delay(double metres, double velocity) {
        return metres / (velocity * LIGHT);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.35, 0.41, 0.68, 0.95, 1})
    void everyVelocityThatACableCanHaveComesBack(double velocity) {
        double[] grid = linear(1, 0.5, 200);
        PhaseDelay delay = lossless(grid, delay(100, velocity), new CableSpan(100, null))
                .delay()
                .orElseThrow();
        for (int i = 0; i < grid.length; i++) {
            assertEquals(delay(100, velocity), delay.propagation(i), ROUNDING);
            assertEquals(delay(100, velocity), delay.group(i), ROUNDING);
        }
    }

    // Widths over 100 m: to 0.4 of light 833.9 ns; from light 500.3 ns; a tenth about 0.7 of light 95.3 ns. Three
    // quarters of a turn: steps below 0.8994, 1.499 and 7.869 MHz.
    @ParameterizedTest
    @CsvSource({
        "0.89, from none to that of 0.4 of the velocity of light",
        "0.91, of 1 to 0.4 of the velocity of light",
        "1.49, of 1 to 0.4 of the velocity of light",
        "1.51, within a tenth of that of the nominal velocity 0.7",
        "7.86, within a tenth of that of the nominal velocity 0.7"
    })
    void theWidestRangeThatTheGridTellsApartIsTaken(double step, String words) {
        PhaseDelay delay = lossless(linear(1, step, 9), delay(100, 0.68), new CableSpan(100, 0.7))
                .delay()
                .orElseThrow();
        assertEquals(words, delay.words());
        assertEquals(delay(100, 0.68), delay.propagation(8), ROUNDING);
    }

    @ParameterizedTest
    @CsvSource({"1.51, , 1.50", "7.88, 0.7, 7.87"})
    void aGridThatTellsNothingApartIsRefusedWithTheStepThatWouldBeTaken(double step, Double nominal, String enough) {
        CableSpan span = new CableSpan(100, nominal);
        double[] grid = linear(1, 0.1, 9);
        for (int i = 4; i < grid.length; i++) {
            grid[i] += step - 0.1;
        }
        NetworkException refused = assertThrows(NetworkException.class, () -> lossless(grid, delay(100, 0.68), span));
        assertTrue(
                refused.getMessage()
                        .startsWith("the grid is too coarse to unwrap the phase of pair 7: from " + grid[3] + " to "
                                + grid[4] + " MHz over 100.0 m; steps below " + enough + " MHz would do here"),
                refused::getMessage);
        assertEquals(nominal == null, refused.getMessage().contains("if the product stated its nominalVelocity"));
        assertEquals("x.s4p:15", refused.where());
        // and the step that the message names, to its three digits, is taken indeed
        double told = Double.parseDouble(enough) - 0.01;
        assertTrue(lossless(linear(1, told, 9), delay(100, 0.68), span).delay().isPresent());
    }

    // Over 100 m with no nominal velocity a step of 1.6 MHz tells nothing apart; once the delay is known it does.
    @ParameterizedTest
    @CsvSource({"28.4, false", "29.1, true"})
    void theLowestFrequenciesReachToThreeTimesTheFirst(double before, boolean taken) {
        double[] grid = linear(10, 0.1, (int) Math.round((before - 10) / 0.1) + 2);
        grid[grid.length - 1] = before + 1.6;
        CableSpan span = new CableSpan(100, null);
        if (taken) {
            assertTrue(lossless(grid, delay(100, 0.68), span).delay().isPresent());
        } else {
            NetworkException refused =
                    assertThrows(NetworkException.class, () -> lossless(grid, delay(100, 0.68), span));
            assertTrue(refused.getMessage().contains("to 30.0 MHz"), refused::getMessage);
        }
    }

    @Test
    void aStepTooWideAfterTheLowestIsRefusedWithTheStepThatWouldBeTaken() {
        double nanoseconds = delay(100, 0.68);
        // 2 % either way of 0.4905 turns a MHz: three quarters of a turn are told apart up to 38.2 MHz
        // the eight lowest tell the delay; the step after them is the ninth frequency's
        double[] grid = linear(1, 0.5, 9);
        grid[8] = grid[7] + 38.3;
        NetworkException refused =
                assertThrows(NetworkException.class, () -> lossless(grid, nanoseconds, new CableSpan(100, null)));
        assertTrue(
                refused.getMessage()
                        .contains("from 4.5 to 42.8 MHz over 100.0 m; steps below 38.2 MHz would do here. "),
                refused::getMessage);
        assertEquals("x.s4p:19", refused.where());
        grid[8] = grid[7] + 38.1;
        PhaseDelay delay =
                lossless(grid, nanoseconds, new CableSpan(100, null)).delay().orElseThrow();
        assertEquals(nanoseconds, delay.propagation(8), ROUNDING);
    }

    @Test
    void groupDelayIsTheSlopeBetweenNeighboursAndAtTheEndsToTheOneThereIs() {
        // τp = 500 + f/10 ns: φ/2π is quadratic, whose slope between two points is that in their middle: 500 + f/5
        double[] grid = linear(1, 0.5, 41);
        PhaseDelay delay = found(grid, f -> -TURN * f * (500 + f / 10) / 1000, f -> 0, new CableSpan(100, null))
                .delay()
                .orElseThrow();
        for (int i = 0; i < grid.length; i++) {
            assertEquals(500 + grid[i] / 10, delay.propagation(i), ROUNDING);
            double middle = i == 0 ? 1.25 : i == 40 ? 20.75 : grid[i];
            assertEquals(500 + middle / 5, delay.group(i), ROUNDING);
        }
    }

    @Test
    void theSkinEffectsPhaseIsNotTakenForATurn() {
        // 5 Np at 1 MHz (43 dB), growing with √f, turn the phase by 5 rad there; a straight line through 1 to 3 MHz
        // would
        // leave half a turn of them at 0 Hz
        double[] grid = linear(1, 0.25, 81);
        double nanoseconds = delay(300, 0.7);
        PhaseDelay delay = found(
                        grid,
                        f -> -TURN * f * nanoseconds / 1000 - 5 * Math.sqrt(f),
                        f -> 5 * Math.sqrt(f),
                        new CableSpan(300, null))
                .delay()
                .orElseThrow();
        for (int i = 0; i < grid.length; i++) {
            assertEquals(
                    nanoseconds + 5 * Math.sqrt(grid[i]) / (TURN * grid[i]) * 1000, delay.propagation(i), ROUNDING);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.2, true", "-0.2, true", "0.3, false", "-0.3, false"})
    void aPhaseThatDoesNotComeFromZeroByMoreThanAQuarterOfATurnGivesNoDelay(double turns, boolean taken) {
        PhaseDelay.Found found = found(
                linear(10, 0.5, 50),
                f -> TURN * (turns - f * delay(100, 0.68) / 1000),
                f -> 0,
                new CableSpan(100, null));
        assertEquals(taken, found.delay().isPresent());
        if (!taken) {
            assertTrue(
                    found.whyNot().startsWith("its phase extrapolates to 0.300 of a turn at 0 Hz, where it must be 0"),
                    found::whyNot);
        }
    }

    // A jump counts from the middle of the range, 0.417 turns a MHz over 100 m; the cable turns 0.4905. At steps of 0.5
    // MHz it is 0.037 turns ahead before any jump.
    @ParameterizedTest
    @CsvSource({"5, 0.3, true", "5, 0.4, false", "5, -0.3, true", "5, -0.45, false", "15, 0.3, true", "15, 0.4, false"})
    void aJumpThatCouldBeTheOtherWayRoundGivesNoDelay(int at, double turns, boolean taken) {
        double[] grid = linear(1, 0.5, 20);
        PhaseDelay.Found found = found(
                grid,
                f -> TURN * ((f >= grid[at] ? -turns : 0) - f * delay(100, 0.68) / 1000),
                f -> 0,
                new CableSpan(100, null));
        boolean lost = found.delay().isEmpty() && found.whyNot().contains("which could be the other way round");
        assertEquals(taken, !lost, () -> "" + found.whyNot());
        if (!taken) {
            assertTrue(
                    found.whyNot()
                            .startsWith("its phase from " + grid[at - 1] + " to " + grid[at] + " MHz (line " + (11 + at)
                                    + ") turns by 0.4"),
                    found::whyNot);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.299, false", "0.301, true", "1.004, true", "1.006, false"})
    void aVelocityThatNoCableHasGivesNoDelay(double velocity, boolean taken) {
        PhaseDelay.Found found = lossless(linear(1, 0.25, 20), delay(100, velocity), new CableSpan(100, null));
        assertEquals(taken, found.delay().isPresent());
        if (!taken) {
            assertTrue(
                    found.whyNot()
                            .matches("its delay at 5\\.75 MHz would be [0-9.e+]+ ns over 100\\.0 m, which no"
                                    + " cable has; is the length right, and is it a cable\\?"),
                    found::whyNot);
        }
    }

    @Test
    void twoFrequenciesHaveADelayAndOneHasNone() {
        CableSpan span = new CableSpan(10, null);
        PhaseDelay two =
                lossless(new double[] {1, 3}, delay(10, 0.68), span).delay().orElseThrow();
        assertEquals(delay(10, 0.68), two.propagation(1), ROUNDING);
        assertEquals(delay(10, 0.68), two.group(0), ROUNDING);
        PhaseDelay.Found one = lossless(new double[] {1}, delay(10, 0.68), span);
        assertTrue(one.delay().isEmpty());
        assertEquals("one frequency alone has no delay that could be told", one.whyNot());
    }
}
