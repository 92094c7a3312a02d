package dev.reelproof.limit;

import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One revision of a limit set.
 *
 * @param id its name, such as {@code category-6a-cable}
 * @param revision from 1
 * @param effective the first day on which it is judged by
 * @param title in words
 * @param pairs the pair counts of cores that it holds for
 * @param referenceTemperature values are corrected to it
 * @param referenceLength values are corrected to it, unless the requirement's unit carries a length of its own
 * @param rounding how values are rounded before they are compared
 * @param grid how fine a sweep must be
 * @param requirements in the order in which they are reported
 * @param allowance pairs that may vary; empty when none may
 * @param leftOut what its source demands and this set does not judge, with the reason
 * @param networkTerms how network-analyser data is read; {@link NetworkTerms#USUAL} when the file does not say
 * @param sha256 digest of the file, hexadecimal
 * @param text the file as it was read
 * @param decisionRule how uncertainty enters the decision, where a requirement does not say otherwise
 */
public record LimitSet(
        String id,
        int revision,
        LocalDate effective,
        String title,
        PairCount pairs,
        Temperature referenceTemperature,
        Length referenceLength,
        RoundingRule rounding,
        GridRule grid,
        List<Requirement> requirements,
        Optional<Allowance> allowance,
        List<LeftOut> leftOut,
        NetworkTerms networkTerms,
        String sha256,
        String text,
        DecisionRule decisionRule) {

    /**
     * A requirement of the source that the set does not judge.
     *
     * @param what the requirement
     * @param why the reason
     */
    public record LeftOut(String what, String why) {

        public LeftOut {
            if (what == null || what.isBlank() || why == null || why.isBlank()) {
                throw new IllegalArgumentException("what is left out is named, with the reason");
            }
        }
    }

    public LimitSet {
        if (id == null || id.isBlank() || title == null || title.isBlank()) {
            throw new IllegalArgumentException("a limit set has a name and a title");
        }
        if (!(revision >= 1)) {
            throw new IllegalArgumentException("revisions of a limit set count from 1, not from " + revision);
        }
        requirements = List.copyOf(requirements);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * The requirement of an id, as it holds for a product; empty when there is none.
     *
     * @param requirementId its id: the same id may stand for several ranges of pair counts
     * @param productPairs how many pairs the product has
     */
    public Optional<Requirement> requirement(String requirementId, int productPairs) {
        return requirements.stream()
                .filter(requirement -> requirement.id().equals(requirementId) && requirement.holdsFor(productPairs))
                .findFirst();
    }

    /** The requirements on a property along frequency that hold for a product of so many pairs, in the set's order. */
    public List<Requirement> alongFrequency(Property property, int productPairs) {
        return requirements.stream()
                .filter(requirement -> requirement.property() == property && requirement.holdsFor(productPairs))
                .filter(requirement -> !(requirement.domain() instanceof Domain.NoFrequency))
                .toList();
    }

    /** The rule that a requirement is decided by. */
    public DecisionRule decisionRuleOf(Requirement requirement) {
        return requirement.decisionRule().orElse(decisionRule);
    }

    /** The length that a requirement's values are referred to. */
    public Length referenceLengthOf(Requirement requirement) {
        return requirement.valueUnit().referredTo().orElse(referenceLength);
    }
}
