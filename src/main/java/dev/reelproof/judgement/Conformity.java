package dev.reelproof.judgement;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Limit;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Source: JCGM 106:2012, clauses 7.2 to 7.4, conformance probability under a normal distribution (the clause's numbers were read
 * second-hand, the formulas are from memory).
 *
 * <p>How probable it is that the true value meets its limit.
 *
 * <ul>
 *   <li>Equation: p = Φ((TU − y)/u) − Φ((TL − y)/u); with one limit alone p = Φ((TU − y)/u) or p = Φ((y − TL)/u)
 *   <li>Symbols: y corrected value, u its standard uncertainty, TL and TU lower and upper tolerance limit, all in one unit; Φ the
 *       standard normal distribution function
 *   <li>Range: any finite value; u of 0 or more
 *   <li>Edge cases: u = 0 gives 1 for a value within its limits, the limits themselves included, and 0 outside; a value on a single
 *       limit has 0.5
 *   <li>Known error: no knowledge from before the test enters (flat prior); a value that must be positive is treated as if it
 *       need not be
 * </ul>
 */
final class Conformity {
    static final String CITATION =
            "JCGM 106:2012, 7.2 to 7.4 (formulas from memory; numbers of 7.4 read second-hand); normal distribution";

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private Conformity() {}

    /**
     * The probability of conformity, from 0 to 1.
     *
     * @param value y, in the limit's unit, not rounded
     * @param limit the limit
     * @param megahertz the frequency, MHz; any where the limit has none
     * @param standard u, in the same unit, 0 or more
     */
    static double probability(double value, Limit limit, double megahertz, double standard) {
        if (!(standard >= 0 && Double.isFinite(standard))) {
            throw new IllegalArgumentException("a standard uncertainty is 0 or more and finite, not " + standard);
        }
        if (standard == 0) {
            return Comparison.unrounded(value, limit, megahertz).passes() ? 1 : 0;
        }
        Optional<Double> toUpper = limit.upper().map(bound -> distance(bound, megahertz, value, standard));
        Optional<Double> toLower = limit.lower().map(bound -> distance(bound, megahertz, value, standard));
        if (toUpper.isEmpty()) {
            return NORMAL.survivalProbability(toLower.orElseThrow());
        }
        if (toLower.isEmpty()) {
            return NORMAL.cumulativeProbability(toUpper.get());
        }
        return NORMAL.probability(toLower.get(), toUpper.get());
    }

    private static double distance(Bound bound, double megahertz, double value, double standard) {
        return (bound.at(megahertz) - value) / standard;
    }
}
