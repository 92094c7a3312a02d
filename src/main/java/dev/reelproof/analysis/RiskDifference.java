package dev.reelproof.analysis;

/**
 * The risk difference, how much more often exposed reels fail than others, with the hybrid score interval: R. G. Newcombe, Interval
 * estimation for the difference between independent proportions, Statistics in Medicine 17 (1998) 873–890, method 10; from memory,
 * checked with its Table II.
 *
 * <p>Equation: d = p1 − p2; lower d − √((p1 − l1)² + (u2 − p2)²), upper d + √((u1 − p1)² + (p2 − l2)²); l and u are the ends of E. B.
 * Wilson's score interval of each proportion: (2np + z² ∓ z √(z² + 4np(1 − p))) / (2(n + z²)).
 *
 * <p>Symbols: p1, p2 failing share of exposed and of other reels; n reels; z = 1.959963985, the normal deviate of 95 % confidence.
 *
 * <p>Range: at least one reel on each side.
 *
 * <p>Edge cases: shares of 0 and 1 have proper intervals; the ends stay from −1 to 1.
 *
 * <p>Known error: coverage is 95 % on average, not for every pair of shares.
 */
final class RiskDifference {
    /** The normal deviate of 95 % confidence, two-sided. */
    static final double DEVIATE = 1.959963984540054;

    private RiskDifference() {}

    /** The difference with its interval, shares from −1 to 1. */
    static Interval of(CountTable table) {
        if (!(table.exposed() >= 1 && table.others() >= 1)) {
            throw new IllegalArgumentException("a difference of shares needs exposed reels and others, not "
                    + table.exposed() + " and " + table.others());
        }
        Interval in = wilson(table.exposedFailing(), table.exposed());
        Interval out = wilson(table.othersFailing(), table.others());
        double difference = in.estimate() - out.estimate();
        return new Interval(
                Math.max(-1, difference - Math.hypot(in.estimate() - in.lower(), out.upper() - out.estimate())),
                difference,
                Math.min(1, difference + Math.hypot(in.upper() - in.estimate(), out.estimate() - out.lower())));
    }

    /** The score interval of a share. */
    static Interval wilson(int failing, int reels) {
        double n = reels;
        double share = failing / n;
        double square = DEVIATE * DEVIATE;
        double middle = 2 * failing + square;
        double half = DEVIATE * Math.sqrt(square + 4 * failing * (1 - share));
        double whole = 2 * (n + square);
        // At shares of 0 and 1, rounding may put an end on the wrong side of the share by a last digit.
        return new Interval(
                Math.max(0, Math.min(share, (middle - half) / whole)),
                share,
                Math.min(1, Math.max(share, (middle + half) / whole)));
    }
}
