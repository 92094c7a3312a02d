package dev.reelproof.limit;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.ReadingUnit;
import java.util.List;
import java.util.Optional;

/**
 * One requirement of a limit set.
 *
 * @param id unique within the set among the requirements that one product can meet; the property's name when it is the only one
 * @param property what is limited
 * @param statistic which figure of the values
 * @param limit the limit, in {@code unit}
 * @param domain where along frequency
 * @param unit the unit of the limit; its numerator is the property's canonical unit, except of a deviation in percent
 * @param laws the correction laws in the order in which they are applied; none when the property is not corrected
 * @param denominator how a resistance unbalance is formed from resistances: minimum, sum or mean; empty for other properties
 * @param scope which combinations count
 * @param pairs the pair counts of products that it holds for; empty for all
 * @param unitPairs the pair counts of units that it holds for; empty for all
 * @param temperatureWindow where it may be judged without a temperature law; empty for anywhere
 * @param source where the figures come from
 * @param condition test conditions in words, such as frequency, voltage and duration; empty when none
 * @param particulars what it says beyond its limit
 * @param decisionRule how uncertainty enters the decision; empty for the set's rule
 */
public record Requirement(
        String id,
        Property property,
        Statistic statistic,
        Limit limit,
        Domain domain,
        ReadingUnit unit,
        List<LawSpec> laws,
        Optional<String> denominator,
        Scope scope,
        Optional<PairCount> pairs,
        Optional<PairCount> unitPairs,
        Optional<TemperatureWindow> temperatureWindow,
        Source source,
        Optional<String> condition,
        Particulars particulars,
        Optional<DecisionRule> decisionRule) {

    public Requirement {
        if (id == null || id.isBlank()) {
            throw new IllegalArgumentException("a requirement has an id");
        }
        if (particulars.each().isPresent() != (statistic == Statistic.PERCENT_OF_PAIRS)) {
            throw new IllegalArgumentException(
                    "requirement '" + id + "': a percentage of pairs, and nothing else, says what each pair must meet");
        }
        if (particulars.per() == Per.UNIT && statistic == Statistic.INDIVIDUAL) {
            throw new IllegalArgumentException(
                    "requirement '" + id + "': each value stands by itself; only a statistic can be taken per unit");
        }
        laws = List.copyOf(laws);
    }

    /** Whether it holds for a product of so many pairs. */
    public boolean holdsFor(int productPairs) {
        return pairs.isEmpty() || pairs.get().holds(productPairs);
    }

    /** The unit that values are corrected to: that of the limit, or of what each pair must meet where pairs are counted. */
    public ReadingUnit valueUnit() {
        return particulars.each().map(Particulars.Each::unit).orElse(unit);
    }
}
