package dev.reelproof.judgement;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.RoundingRule;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;

/**
 * A corrected value held against its limit.
 *
 * @param judged the value that was compared: rounded where the rule says so
 * @param bound the bound that counted; of two, the nearer
 * @param limit its value there
 * @param margin how far {@code judged} lies on the good side, 0 on the limit; a value on the limit passes
 */
record Comparison(double judged, Bound bound, double limit, double margin) {
    /**
     * A miss smaller than this share of the figures is noise of double arithmetic (unit conversion and a few laws lose some
     * units in the sixteenth digit) and counts as exactly on the limit.
     */
    private static final double ARITHMETIC_NOISE = 1e-12;

    /** Digits that survive double arithmetic; ties are told on the decimal figure they make. */
    private static final MathContext TRUE_DIGITS = new MathContext(12, RoundingMode.HALF_EVEN);

    Comparison {
        if (!Double.isFinite(margin)) {
            throw new IllegalArgumentException(
                    "no margin between " + judged + " and " + limit + ": a value cannot be judged");
        }
    }

    /** Compares without rounding; for ranking. */
    static Comparison unrounded(double value, Limit limit, double megahertz) {
        return of(value, limit, megahertz, RoundingRule.ABSOLUTE);
    }

    /**
     * Compares by the set's rounding rule.
     *
     * @param value the corrected value
     * @param limit the limit, in the value's unit
     * @param megahertz the frequency, MHz; NaN where there is none
     */
    static Comparison of(double value, Limit limit, double megahertz, RoundingRule rule) {
        Comparison upper = limit.upper()
                .map(bound -> against(value, bound, megahertz, rule, 1))
                .orElse(null);
        Comparison lower = limit.lower()
                .map(bound -> against(value, bound, megahertz, rule, -1))
                .orElse(null);
        if (upper == null) {
            return Objects.requireNonNull(lower, "a limit has a bound");
        }
        return lower == null || upper.margin <= lower.margin ? upper : lower;
    }

    private static Comparison against(double value, Bound bound, double megahertz, RoundingRule rule, int sign) {
        double judged = rounded(value, bound, rule);
        double limit = bound.at(megahertz);
        double margin = sign * (limit - judged);
        // A value without end would make its own noise without end, and pass.
        boolean onTheLimit = Double.isFinite(margin) && Math.abs(margin) <= noise(judged, limit);
        return new Comparison(judged, bound, limit, onTheLimit ? 0 : margin);
    }

    /** The rounding method of ASTM E29 (from memory): to the places of the limit, a tie to the even digit. */
    private static double rounded(double value, Bound bound, RoundingRule rule) {
        if (rule == RoundingRule.ABSOLUTE || bound.decimals().isEmpty()) {
            return value;
        }
        return BigDecimal.valueOf(value)
                .round(TRUE_DIGITS)
                .setScale(bound.decimals().getAsInt(), RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    /** What arithmetic alone may have made of a distance between two figures. */
    static double noise(double judged, double limit) {
        return ARITHMETIC_NOISE * Math.max(Math.abs(limit), Math.abs(judged));
    }

    boolean passes() {
        return margin >= 0;
    }

    /**
     * The statement of a decision rule.
     *
     * @param guardBand w, in the unit of the margin; 0 for simple acceptance
     */
    Outcome outcome(DecisionRule rule, double guardBand) {
        double noise = noise(judged, limit);
        if (margin >= guardBand - (guardBand == 0 ? 0 : noise)) {
            return Outcome.PASS;
        }
        if (!rule.isConditional()) {
            return Outcome.FAIL;
        }
        if (margin >= 0) {
            return Outcome.CONDITIONAL_PASS;
        }
        return margin >= -guardBand - noise ? Outcome.CONDITIONAL_FAIL : Outcome.FAIL;
    }
}
