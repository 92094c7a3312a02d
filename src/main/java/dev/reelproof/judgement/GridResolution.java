package dev.reelproof.judgement;

import java.util.Optional;

/**
 * Tells whether a sweep varies faster than its frequencies follow one another, so that its worst value may lie between two of them.
 *
 * <p>Source: (1) the delay of an echo, textbook; (2) the sampling theorem (both from memory); (3) and the figures in it are common
 * practice, no source.
 *
 * <ul>
 *   <li>Equation: what is reflected, or couples, at a distance x comes back 2x/v later and makes a ripple of the period v/(2x), at
 *       the least P = v/(2L) (1); steps of h follow it when h &lt; P/2 (2). Where they need not, the sweep is looked at: it is not
 *       followed at a frequency when, of the 20 points around it, more than half are higher or lower than both their neighbours, by
 *       half a decibel or more (3)
 *   <li>Symbols: v velocity in the cable in m/µs, L length of the reel in m, P period and h step in MHz; of a ripple with n points a
 *       period 2/n of the points are turning points, so that (3) says: fewer than four points a period, and high enough to matter
 *   <li>Why both: (1) alone would blame nearly every sweep of a reel, whose far end is hidden by its loss above some megahertz;
 *       (3) alone would blame noise and instrument ripple that no finer grid resolves
 *   <li>Range: at least 5 points; frequencies ascending. Edge cases: a value that is not finite, such as one of no measurement, is no
 *       turning point
 *   <li>Known error: steps near a whole number of periods catch a ripple at phases that change slowly. It then looks smooth and is
 *       not found; its crests and troughs are seen all the same, at other frequencies, unless the number is whole all along
 * </ul>
 */
public final class GridResolution {
    private static final double METRES_PER_MICROSECOND = 299.792458;
    private static final double NANOSECONDS_PER_MICROSECOND = 1000;
    private static final int THERE_AND_BACK = 2;
    private static final double STEPS_A_PERIOD = 2;
    private static final int AROUND = 10;
    private static final int LEAST_POINTS = 5;
    private static final double TURNING_SHARE = 0.5;
    private static final double LEAST_SWING = 0.5;

    private final double ripplePeriodMegahertz;

    /**
     * Where a grid does not follow its sweep.
     *
     * @param frequencyMegahertz the frequency, in MHz
     * @param stepMegahertz the wider of the steps to its neighbours, in MHz
     * @param ripplePeriodMegahertz the shortest period that echoes of this reel have, in MHz
     * @param swingDecibel the greatest difference of two neighbours around it, in dB: so much may a value between them differ
     * @param share of the points around it, how many are turning points
     */
    public record Unresolved(
            double frequencyMegahertz,
            double stepMegahertz,
            double ripplePeriodMegahertz,
            double swingDecibel,
            double share) {

        public Unresolved {
            if (!(stepMegahertz > 0
                    && ripplePeriodMegahertz > 0
                    && stepMegahertz >= ripplePeriodMegahertz / STEPS_A_PERIOD)) {
                throw new IllegalArgumentException("steps of " + stepMegahertz + " MHz follow a period of "
                        + ripplePeriodMegahertz + " MHz, or are none");
            }
            if (!(swingDecibel >= LEAST_SWING && share > TURNING_SHARE && share <= 1)) {
                throw new IllegalArgumentException(
                        "a swing of " + swingDecibel + " dB at a share of " + share + " of the points is followed");
            }
        }

        /** The widest step that would follow the ripple, in MHz; it must be less. */
        public double stepNeededMegahertz() {
            return ripplePeriodMegahertz / STEPS_A_PERIOD;
        }
    }

    private GridResolution(double ripplePeriodMegahertz) {
        this.ripplePeriodMegahertz = ripplePeriodMegahertz;
    }

    /**
     * The resolution that a reel needs, by its delay.
     *
     * @param metres its length in m; positive and finite
     * @param delayNanoseconds propagation delay of the whole reel in ns; positive and finite
     */
    public static GridResolution ofDelay(double metres, double delayNanoseconds) {
        requirePositive("length", metres, "m");
        requirePositive("delay", delayNanoseconds, "ns");
        double velocity = metres / delayNanoseconds * NANOSECONDS_PER_MICROSECOND;
        if (!(velocity <= METRES_PER_MICROSECOND)) {
            throw new IllegalArgumentException(
                    delayNanoseconds + " ns over " + metres + " m would be faster than light");
        }
        return new GridResolution(velocity / (THERE_AND_BACK * metres)); // (1)
    }

    /**
     * The resolution that a reel needs, by the nominal velocity of its product.
     *
     * @param metres its length in m; positive and finite
     * @param nominalVelocity velocity of propagation over that of light, above 0 and below 1
     */
    public static GridResolution ofVelocity(double metres, double nominalVelocity) {
        requirePositive("length", metres, "m");
        if (!(nominalVelocity > 0 && nominalVelocity < 1)) {
            throw new IllegalArgumentException("a nominal velocity must lie between 0 and 1, not " + nominalVelocity);
        }
        return new GridResolution(nominalVelocity * METRES_PER_MICROSECOND / (THERE_AND_BACK * metres)); // (1)
    }

    private static void requirePositive(String name, double value, String unit) {
        if (!(value > 0 && Double.isFinite(value))) {
            throw new IllegalArgumentException("a " + name + " must be positive and finite, not " + value + " " + unit);
        }
    }

    /** The shortest period of a ripple, in MHz. */
    public double ripplePeriodMegahertz() {
        return ripplePeriodMegahertz;
    }

    /**
     * Where a sweep is least followed: of the places that are not, the one with the greatest swing.
     *
     * @param megahertz frequencies in MHz, ascending
     * @param decibel the value at each, in dB
     */
    public Optional<Unresolved> of(double[] megahertz, double[] decibel) {
        requireSweep(megahertz, decibel);
        Optional<Unresolved> worst = Optional.empty();
        for (int i = 0; i < megahertz.length; i++) {
            Optional<Unresolved> here = at(i, megahertz, decibel);
            if (here.isPresent()
                    && (worst.isEmpty()
                            || here.get().swingDecibel() > worst.get().swingDecibel())) {
                worst = here;
            }
        }
        return worst;
    }

    /**
     * Whether a sweep is followed around one of its points, such as the worst of a finding.
     *
     * @param index the point, from 0
     * @param megahertz frequencies in MHz, ascending
     * @param decibel the value at each, in dB
     * @return what is not followed; empty when the grid follows the sweep there, or has too few points to tell
     */
    public Optional<Unresolved> around(int index, double[] megahertz, double[] decibel) {
        requireSweep(megahertz, decibel);
        if (!(index >= 0 && index < megahertz.length)) {
            throw new IllegalArgumentException("point " + index + " of a sweep of " + megahertz.length);
        }
        return at(index, megahertz, decibel);
    }

    private static void requireSweep(double[] megahertz, double[] decibel) {
        if (megahertz.length != decibel.length) {
            throw new IllegalArgumentException(decibel.length + " values for " + megahertz.length + " frequencies");
        }
        for (int i = 1; i < megahertz.length; i++) {
            if (!(megahertz[i] > megahertz[i - 1])) {
                throw new IllegalArgumentException(
                        "frequencies ascend, not from " + megahertz[i - 1] + " to " + megahertz[i] + " MHz");
            }
        }
    }

    private Optional<Unresolved> at(int index, double[] megahertz, double[] decibel) {
        int size = megahertz.length;
        if (size < LEAST_POINTS) {
            return Optional.empty();
        }
        double step = Math.max(
                index > 0 ? megahertz[index] - megahertz[index - 1] : 0,
                index + 1 < size ? megahertz[index + 1] - megahertz[index] : 0);
        if (!(step >= ripplePeriodMegahertz / STEPS_A_PERIOD)) { // (2)
            return Optional.empty();
        }
        int from = Math.max(1, Math.min(index - AROUND, size - 1 - 2 * AROUND));
        int to = Math.min(size - 1, from + 2 * AROUND);
        int turning = 0;
        double swing = 0;
        for (int i = from; i < to; i++) {
            double before = decibel[i] - decibel[i - 1];
            double after = decibel[i + 1] - decibel[i];
            boolean turns = before * after < 0 && Math.min(Math.abs(before), Math.abs(after)) >= LEAST_SWING;
            if (turns) {
                turning++;
                swing = Math.max(swing, Math.max(Math.abs(before), Math.abs(after)));
            }
        }
        double share = (double) turning / (to - from);
        return share > TURNING_SHARE // (3)
                ? Optional.of(new Unresolved(megahertz[index], step, ripplePeriodMegahertz, swing, share))
                : Optional.empty();
    }
}
