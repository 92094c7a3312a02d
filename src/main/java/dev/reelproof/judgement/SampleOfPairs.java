package dev.reelproof.judgement;

import dev.reelproof.correction.SummaryStatistics;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Requirement;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Map;
import java.util.Optional;

/** Pairs that may stand for all, by the rule of a requirement: enough of them, with their average within a band. */
final class SampleOfPairs {
    /** Digits of an average in a sentence. */
    private static final MathContext DIGITS_TOLD = new MathContext(6);

    private final Requirement requirement;
    private final Particulars.Sampling rule;
    private final int pairs;
    private final double[] values;

    private SampleOfPairs(Requirement requirement, Particulars.Sampling rule, int pairs, double[] values) {
        this.requirement = requirement;
        this.rule = rule;
        this.pairs = pairs;
        this.values = values;
    }

    /**
     * The sample; empty where the requirement knows none, all pairs were measured, or too few to be one.
     *
     * @param pairs pairs of the core
     */
    static Optional<SampleOfPairs> of(Requirement requirement, int pairs, GatheredSeries gathered) {
        return requirement
                .particulars()
                .sampling()
                .map(rule -> new SampleOfPairs(requirement, rule, pairs, measured(gathered)))
                .filter(sample -> sample.values.length >= sample.rule.pairs() && sample.values.length < pairs);
    }

    private static double[] measured(GatheredSeries gathered) {
        return gathered.series().stream()
                .filter(series -> series.obstacle(0) == null)
                .mapToDouble(series -> series.corrected(0))
                .toArray();
    }

    /**
     * Whether the pairs measured stand for all. Their average is held against the band as it is, not rounded: the band says which samples
     * may stand for all, it is no limit of the cable.
     */
    boolean standsForAll() {
        return Comparison.unrounded(
                        SummaryStatistics.mean(values), Limit.between(rule.lower(), rule.upper()), Double.NaN)
                .passes();
    }

    /** That they stand for all, in words. */
    String words() {
        return "sample: " + values.length + " of " + pairs + " pairs measured, whose average lies within "
                + rule.lower().formula(Double.NaN) + " to " + rule.upper().formula(Double.NaN)
                + "; the rest need not be measured";
    }

    /** Why the rest must be measured all the same. */
    Obstacle obstacle(Obstacle.Kind kind) {
        return new Obstacle(
                kind,
                Map.of(
                        "property", requirement.property().id(),
                        "statistic", requirement.statistic().word(),
                        "count", String.valueOf(values.length),
                        "pairs", String.valueOf(pairs),
                        "average",
                                BigDecimal.valueOf(SummaryStatistics.mean(values))
                                        .round(DIGITS_TOLD)
                                        .toPlainString(),
                        "lower", rule.lower().formula(Double.NaN),
                        "upper", rule.upper().formula(Double.NaN),
                        "unit", requirement.unit().text()));
    }
}
