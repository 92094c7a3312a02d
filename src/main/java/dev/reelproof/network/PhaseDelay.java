package dev.reelproof.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Source: the definitions of phase and group delay, textbook (from memory); the way to unwrap is ours. Delays of a transmission
 * from its phase.
 *
 * <ul>
 *   <li>Equation: τp = −φ/(2πf) (1), τg = −(1/2π) dφ/df (2), the derivative taken from the neighbours on both sides, at the
 *       ends from the one there is
 *   <li>Symbols: φ phase of S21 in rad, without jumps and 0 at 0 Hz; f frequency in MHz; τp propagation (phase) delay, τg group
 *       delay, in ns
 *   <li>Unwrapping at the lowest frequencies (up to three times the first, eight points at least): the delay is expected in the
 *       widest of three ranges that the grid resolves. They begin at no delay, or at that of light over the length, and end at that of
 *       0.4 of the velocity of light; or they are the delay of the product's nominal velocity, give or take a tenth. A grid resolves
 *       a range when its step times the width of the range is below three quarters of a turn. The phase of the middle of the range
 *       is taken off; what is left turns by less than three eighths of a turn a step, and an eighth remains for noise
 *   <li>Turns at the first frequency: the skin effect's phase, which in rad equals its loss in Np and grows with √f, is taken
 *       off; what is left is extrapolated to 0 Hz as a straight line in f, and the nearest whole number of turns is what was
 *       lost. Further than a quarter of a turn from a whole number there is no delay
 *   <li>Unwrapping from there on: apart from the skin effect's part, a pair's delay is expected within 2 % of that of the point
 *       before, a range that the step must resolve as above; so a grid may widen as its frequencies grow
 *   <li>A grid that resolves none of the ranges is refused. A step of more than three eighths of a turn beside what was expected
 *       leaves no delay: the signal is lost in noise, or it is no cable
 *   <li>Range: a cable between 0.3 and 1 of the velocity of light, seen at two frequencies at least; edge cases: an attenuator
 *       has no delay, and a pair with its conductors exchanged at one end half a turn too much: neither has one here
 *   <li>Known error: of (1) that of the phase over 2πf; of (2) that of the difference of two phases over 2π times their
 *       distance
 * </ul>
 */
final class PhaseDelay {
    static final String CITATION =
            "phase delay −φ/(2πf) and group delay −dφ/(2π df), textbook definitions (from memory)";

    /** No cable of the trade is slower. Common practice, no source. */
    private static final double SLOWEST = 0.4;

    /** How far a pair may be from the nominal velocity of its product. Common practice, no source. */
    private static final double NOMINAL_WITHIN = 0.1;

    /** How far the delay is from that of the frequency before, the skin effect aside. Common practice, no source. */
    private static final double STEADY_WITHIN = 0.02;

    private static final double LEAST_VELOCITY = 0.3;
    private static final double MOST_VELOCITY = 1.005;
    private static final double METRES_PER_NANOSECOND = 0.299792458;
    private static final double NANOSECONDS_MEGAHERTZ = 1000;
    private static final double TURN = 2 * Math.PI;
    /** Of a turn: what a range may span in one step. */
    private static final double SPAN_TOLD_APART = 0.75;

    private static final double WIDEST_SURPRISE = SPAN_TOLD_APART / 2 * TURN;
    private static final double NEAR_A_WHOLE_TURN = 0.25;
    private static final double LOW_UP_TO = 3;
    private static final int LEAST_LOW_POINTS = 8;

    private final double[] megahertz;
    private final double[] phase;
    private final String words;

    private PhaseDelay(double[] megahertz, double[] phase, String words) {
        this.megahertz = megahertz;
        this.phase = phase;
        this.words = words;
    }

    /** A range that a delay lies in, in ns. */
    private record DelayRange(double least, double most, String words) {
        double width() {
            return most - least;
        }
    }

    /** The delays, or why there are none. */
    record Found(Optional<PhaseDelay> delay, @Nullable String whyNot) {}

    /**
     * The delays of a transmission.
     *
     * @param place what is transmitted, for messages: "pair 1"
     * @param data the file, for lines
     * @param first the index of the first frequency that counts
     * @param re real parts from there on
     * @param im imaginary parts
     * @param span the cable
     * @throws NetworkException when the grid is too coarse to unwrap
     */
    static Found of(String place, NetworkData data, int first, double[] re, double[] im, CableSpan span) {
        if (re.length < 2) {
            return new Found(Optional.empty(), "one frequency alone has no delay that could be told");
        }
        return new Unwrapping(place, data, first, re, im, span).found();
    }

    /** The work on one transmission. */
    private static final class Unwrapping {
        private final String place;
        private final NetworkData data;
        private final int first;
        private final double[] re;
        private final double[] im;
        private final CableSpan span;
        private final double[] megahertz;
        private final double[] phase;
        private final int low;
        private final double skin;
        private @Nullable String doubt;

        Unwrapping(String place, NetworkData data, int first, double[] re, double[] im, CableSpan span) {
            this.place = place;
            this.data = data;
            this.first = first;
            this.re = re;
            this.im = im;
            this.span = span;
            this.megahertz = new double[re.length];
            for (int i = 0; i < re.length; i++) {
                megahertz[i] = data.megahertz(first + i);
            }
            this.phase = new double[re.length];
            int count = Math.min(LEAST_LOW_POINTS, re.length);
            while (count < re.length && megahertz[count] <= LOW_UP_TO * megahertz[0]) {
                count++;
            }
            this.low = count;
            double[] neper = new double[low];
            double[] root = new double[low];
            for (int i = 0; i < low; i++) {
                root[i] = Math.sqrt(megahertz[i]);
                neper[i] = -StrictMath.log(Math.max(Levels.LEAST_MAGNITUDE, StrictMath.hypot(re[i], im[i])));
            }
            this.skin = slopeAndIntercept(root, neper)[0];
        }

        Found found() {
            DelayRange range = range();
            double middle = (range.least + range.most) / 2;
            for (int i = 0; i < low; i++) {
                double expected = i == 0 ? 0 : phase[i - 1];
                double turned = TURN * megahertz[i] * middle / NANOSECONDS_MEGAHERTZ;
                phase[i] = expected + surprise(i, expected - turned, i > 0);
            }
            if (doubt != null) {
                return new Found(Optional.empty(), doubt);
            }
            double turns = interceptTurns();
            double whole = Math.rint(turns);
            if (!(Math.abs(turns - whole) <= NEAR_A_WHOLE_TURN)) {
                return new Found(
                        Optional.empty(),
                        "its phase extrapolates to " + told(Math.abs(turns - whole))
                                + " of a turn at 0 Hz, where it must be 0: are conductors a and b exchanged at one end, or is"
                                + " the lowest frequency too high?");
            }
            for (int i = 0; i < low; i++) {
                phase[i] -= TURN * (whole + megahertz[i] * middle / NANOSECONDS_MEGAHERTZ);
            }
            for (int i = low; i < phase.length; i++) {
                double before = megahertz[i - 1];
                double turnsPerMegahertz = -(phase[i - 1] + skin * Math.sqrt(before)) / (TURN * before);
                double widest = SPAN_TOLD_APART / (2 * STEADY_WITHIN * Math.abs(turnsPerMegahertz));
                if (!(megahertz[i] - before < widest)) {
                    throw tooCoarse(i, widest);
                }
                double expected = -TURN * megahertz[i] * turnsPerMegahertz - skin * Math.sqrt(megahertz[i]);
                phase[i] = expected + surprise(i, expected, true);
            }
            if (doubt != null) {
                return new Found(Optional.empty(), doubt);
            }
            PhaseDelay delay = new PhaseDelay(megahertz, phase, range.words);
            return delay.velocityFault(span)
                    .map(fault -> new Found(Optional.empty(), fault))
                    .orElse(new Found(Optional.of(delay), null));
        }

        /** The widest range that the lowest frequencies tell apart. */
        private DelayRange range() {
            int widest = 1;
            for (int i = 2; i < low; i++) {
                if (megahertz[i] - megahertz[i - 1] > megahertz[widest] - megahertz[widest - 1]) {
                    widest = i;
                }
            }
            double step = megahertz[widest] - megahertz[widest - 1];
            List<DelayRange> ranges = ranges(span);
            for (DelayRange range : ranges) {
                if (step * range.width() < SPAN_TOLD_APART * NANOSECONDS_MEGAHERTZ) {
                    return range;
                }
            }
            throw tooCoarse(
                    widest,
                    SPAN_TOLD_APART
                            * NANOSECONDS_MEGAHERTZ
                            / ranges.get(ranges.size() - 1).width());
        }

        /** How far the phase at an index is from the one expected, between minus and plus half a turn. */
        private double surprise(int i, double expected, boolean bounded) {
            double surprise = StrictMath.IEEEremainder(StrictMath.atan2(im[i], re[i]) - expected, TURN);
            if (bounded && doubt == null && !(Math.abs(surprise) <= WIDEST_SURPRISE)) {
                doubt = "its phase from " + megahertz[i - 1] + " to " + megahertz[i] + " MHz (line "
                        + data.line(first + i)
                        + ") turns by " + told(Math.abs(surprise) / TURN)
                        + " of a turn beside what is expected, which could be the other way round: is the signal lost in"
                        + " noise, or is it no cable of this length?";
            }
            return surprise;
        }

        /** The phase at 0 Hz in turns, extrapolated from the lowest frequencies. */
        private double interceptTurns() {
            double[] straight = new double[low];
            for (int i = 0; i < low; i++) {
                straight[i] = phase[i] + skin * Math.sqrt(megahertz[i]);
            }
            return slopeAndIntercept(Arrays.copyOf(megahertz, low), straight)[1] / TURN;
        }

        private NetworkException tooCoarse(int i, double enough) {
            return new NetworkException(
                    data.file(),
                    data.line(first + i),
                    "the grid is too coarse to unwrap the phase of " + place + ": from " + megahertz[i - 1] + " to "
                            + megahertz[i] + " MHz over " + span.metres() + " m; steps below " + told(enough)
                            + " MHz would do here"
                            + (span.nominalVelocity() == null && i < low
                                    ? ", or wider ones if the product stated its nominalVelocity"
                                    : "")
                            + ". Measure on a finer grid, or name what to derive in 'derive' and leave the delays out");
        }
    }

    private static List<DelayRange> ranges(CableSpan span) {
        double light = span.metres() / METRES_PER_NANOSECOND;
        List<DelayRange> ranges = new ArrayList<>();
        ranges.add(new DelayRange(0, light / SLOWEST, "from none to that of " + SLOWEST + " of the velocity of light"));
        ranges.add(new DelayRange(light, light / SLOWEST, "of 1 to " + SLOWEST + " of the velocity of light"));
        if (span.nominalVelocity() != null) {
            double nominal = light / span.nominalVelocity();
            ranges.add(new DelayRange(
                    nominal * (1 - NOMINAL_WITHIN),
                    nominal * (1 + NOMINAL_WITHIN),
                    "within a tenth of that of the nominal velocity " + span.nominalVelocity()));
        }
        return ranges;
    }

    /** The straight line of least squares. */
    private static double[] slopeAndIntercept(double[] x, double[] y) {
        double meanX = 0;
        double meanY = 0;
        for (int i = 0; i < x.length; i++) {
            meanX += x[i] / x.length;
            meanY += y[i] / x.length;
        }
        double products = 0;
        double squares = 0;
        for (int i = 0; i < x.length; i++) {
            products += (x[i] - meanX) * (y[i] - meanY);
            squares += (x[i] - meanX) * (x[i] - meanX);
        }
        double slope = products / squares;
        return new double[] {slope, meanY - slope * meanX};
    }

    private Optional<String> velocityFault(CableSpan span) {
        for (int i = 0; i < megahertz.length; i++) {
            double delay = propagation(i);
            double velocity = span.metres() / (delay * METRES_PER_NANOSECOND);
            boolean last = i == megahertz.length - 1;
            boolean possible = delay > 0 && (!last || (velocity >= LEAST_VELOCITY && velocity <= MOST_VELOCITY));
            if (!possible) {
                return Optional.of("its delay at " + megahertz[i] + " MHz would be " + told(delay) + " ns over "
                        + span.metres() + " m, which no cable has; is the length right, and is it a cable?");
            }
        }
        return Optional.empty();
    }

    private static String told(double value) {
        return String.format(Locale.ROOT, "%.3g", value);
    }

    /** Propagation delay at an index, ns. */
    double propagation(int i) {
        return -phase[i] / (TURN * megahertz[i]) * NANOSECONDS_MEGAHERTZ; // (1)
    }

    /** Group delay at an index, ns. */
    double group(int i) {
        int before = Math.max(0, i - 1);
        int after = Math.min(phase.length - 1, i + 1);
        return -(phase[after] - phase[before])
                / (TURN * (megahertz[after] - megahertz[before]))
                * NANOSECONDS_MEGAHERTZ; // (2)
    }

    /** The range that the delay was looked for in, in words. */
    String words() {
        return words;
    }
}
