package dev.reelproof.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Source: the definitions of phase and group delay, textbook (from memory); the way to unwrap is ours. Delays of a transmission from its phase.
 *
 * <ul>
 *   <li>Equation: τp = −φ/(2πf) (1), τg = −(1/2π) dφ/df (2), the derivative taken from the neighbours on both sides, at the ends from the one there is
 *   <li>Symbols: φ phase of S21 in rad, without jumps and 0 at 0 Hz; f frequency in MHz; τp propagation (phase) delay, τg group delay, in ns
 *   <li>Unwrapping: the delay lies in a range that is known beforehand: from none to that of 0.4 of the velocity of light over the length, if
 *       the grid tells so much apart; else from that of light itself; else that of the product's nominal velocity, give or take a tenth. A grid tells
 *       a range apart when its widest step times the range's width is below one turn; a grid that tells none apart is refused. The phase of the
 *       range's middle is taken off, so that what is left turns by less than half a turn a step; a step of more than three
 *       quarters of that is refused too, since noise could have turned it the other way
 *   <li>Turns at the lowest frequency: what is left is extrapolated to 0 Hz as a straight line in f over the points up to three times
 *       the lowest frequency (eight at least), after the skin effect's phase, which in rad equals its loss in Np and grows with √f, is
 *       taken off; the nearest whole number of turns is what was lost. Further than a quarter of a turn from a whole number there is no delay
 *   <li>Range: a cable between 0.3 and 1 of the velocity of light, seen at two frequencies at least; edge cases: an attenuator has no delay, and
 *       a pair with its conductors exchanged at one end half a turn too much: neither has one here
 *   <li>Known error: of (1) that of the phase over 2πf; of (2) that of the difference of two phases over 2π times their distance
 * </ul>
 */
final class PhaseDelay {
    static final String CITATION =
            "phase delay −φ/(2πf) and group delay −dφ/(2π df), textbook definitions (from memory)";

    /** No cable of the trade is slower. Common practice, no source. */
    private static final double SLOWEST = 0.4;

    /** How far a pair may be from the nominal velocity of its product. Common practice, no source. */
    private static final double NOMINAL_WITHIN = 0.1;

    private static final double LEAST_VELOCITY = 0.3;
    private static final double MOST_VELOCITY = 1.005;
    private static final double METRES_PER_NANOSECOND = 0.299792458;
    private static final double NANOSECONDS_MEGAHERTZ = 1000;
    private static final double TURN = 2 * Math.PI;
    private static final double WIDEST_RESIDUAL_STEP = 0.75 * Math.PI;
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
    record Found(Optional<PhaseDelay> delay, String whyNot) {}

    /**
     * The delays of a transmission.
     *
     * @param place what is transmitted, for messages: "pair 1"
     * @param data the file, for lines
     * @param first the index of the first frequency that counts
     * @param re real parts from there on
     * @param im imaginary parts
     * @param span the cable
     * @throws NetworkException when the grid is too coarse, or noise too strong, to unwrap
     */
    static Found of(String place, NetworkData data, int first, double[] re, double[] im, CableSpan span) {
        int size = re.length;
        if (size < 2) {
            return new Found(Optional.empty(), "one frequency alone has no delay that could be told");
        }
        double[] megahertz = new double[size];
        int widest = 1;
        for (int i = 0; i < size; i++) {
            megahertz[i] = data.megahertz(first + i);
            if (i > 0 && megahertz[i] - megahertz[i - 1] > megahertz[widest] - megahertz[widest - 1]) {
                widest = i;
            }
        }
        double step = megahertz[widest] - megahertz[widest - 1];
        List<DelayRange> ranges = ranges(span);
        DelayRange range = ranges.stream()
                .filter(one -> step * one.width() < NANOSECONDS_MEGAHERTZ)
                .findFirst()
                .orElseThrow(() -> tooCoarse(place, data, first, megahertz, step, span, ranges));
        double middle = (range.least + range.most) / 2;
        double[] left = unwrapped(place, data, first, megahertz, re, im, middle);
        double turns = interceptTurns(megahertz, left, re, im);
        double whole = Math.rint(turns);
        if (!(Math.abs(turns - whole) <= NEAR_A_WHOLE_TURN)) {
            return new Found(
                    Optional.empty(),
                    "its phase extrapolates to " + told(Math.abs(turns - whole))
                            + " of a turn at 0 Hz, where it must be 0: are conductors a and b exchanged at one end, or is"
                            + " the lowest frequency too high?");
        }
        double[] phase = new double[size];
        for (int i = 0; i < size; i++) {
            phase[i] = left[i] - TURN * (whole + megahertz[i] * middle / NANOSECONDS_MEGAHERTZ);
        }
        PhaseDelay delay = new PhaseDelay(megahertz, phase, range.words);
        return delay.velocityFault(span)
                .map(fault -> new Found(Optional.empty(), fault))
                .orElse(new Found(Optional.of(delay), null));
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

    private static NetworkException tooCoarse(
            String place,
            NetworkData data,
            int first,
            double[] megahertz,
            double step,
            CableSpan span,
            List<DelayRange> ranges) {
        int at = 1;
        while (megahertz[at] - megahertz[at - 1] < step) {
            at++;
        }
        double enough = NANOSECONDS_MEGAHERTZ / ranges.get(ranges.size() - 1).width();
        return new NetworkException(
                data.file(),
                data.line(first + at),
                "the grid is too coarse to unwrap the phase of " + place + ": from " + megahertz[at - 1] + " to "
                        + megahertz[at] + " MHz over " + span.metres() + " m; steps below " + told(enough)
                        + " MHz would do"
                        + (span.nominalVelocity() == null
                                ? ", or wider ones if the product stated its nominalVelocity"
                                : "")
                        + ". Measure on a finer grid, or name what to derive in 'derive' and leave the delays out");
    }

    private static double[] unwrapped(
            String place, NetworkData data, int first, double[] megahertz, double[] re, double[] im, double middle) {
        double[] left = new double[re.length];
        for (int i = 0; i < re.length; i++) {
            double turned = TURN * megahertz[i] * middle / NANOSECONDS_MEGAHERTZ;
            double angle = StrictMath.IEEEremainder(StrictMath.atan2(im[i], re[i]) + turned, TURN);
            if (i > 0) {
                double step = StrictMath.IEEEremainder(angle - left[i - 1], TURN);
                if (!(Math.abs(step) <= WIDEST_RESIDUAL_STEP)) {
                    throw new NetworkException(
                            data.file(),
                            data.line(first + i),
                            "the phase of " + place + " from " + megahertz[i - 1] + " to " + megahertz[i]
                                    + " MHz cannot be unwrapped: beside what the length gives it turns by "
                                    + told(Math.abs(step) / TURN)
                                    + " of a turn, which could be the other way round; the grid is too coarse, or the signal"
                                    + " is lost in noise. Measure on a finer grid or a shorter range, or name what to derive"
                                    + " in 'derive' and leave the delays out");
                }
                angle = left[i - 1] + step;
            }
            left[i] = angle;
        }
        return left;
    }

    /** The phase at 0 Hz in turns, extrapolated from the lowest frequencies. */
    private static double interceptTurns(double[] megahertz, double[] left, double[] re, double[] im) {
        int low = Math.min(LEAST_LOW_POINTS, left.length);
        while (low < left.length && megahertz[low] <= LOW_UP_TO * megahertz[0]) {
            low++;
        }
        double[] root = new double[low];
        double[] neper = new double[low];
        double[] f = new double[low];
        for (int i = 0; i < low; i++) {
            f[i] = megahertz[i];
            root[i] = Math.sqrt(megahertz[i]);
            neper[i] = -StrictMath.log(Math.max(Levels.LEAST_MAGNITUDE, StrictMath.hypot(re[i], im[i])));
        }
        double skin = line(root, neper)[1];
        double[] straight = new double[low];
        for (int i = 0; i < low; i++) {
            straight[i] = left[i] + skin * root[i];
        }
        return line(f, straight)[0] / TURN;
    }

    /** Intercept and slope of the straight line of least squares. */
    private static double[] line(double[] x, double[] y) {
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
        return new double[] {meanY - slope * meanX, slope};
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
