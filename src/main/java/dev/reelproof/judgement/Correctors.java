package dev.reelproof.judgement;

import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Length;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The correctors of a judgement: one for all requirements that correct alike, so that a sweep judged by itself and as a part of a power sum
 * is corrected once.
 */
final class Correctors {
    private final Evidence evidence;
    private final LimitSet limitSet;
    private final Map<Alike, Corrector> correctors = new HashMap<>();

    Correctors(Evidence evidence, LimitSet limitSet) {
        this.evidence = evidence;
        this.limitSet = limitSet;
    }

    /**
     * What makes requirements correct alike.
     *
     * @param alone the requirement, where it asks for a least loss of its own
     */
    private record Alike(
            List<LawSpec> laws,
            Length referenceLength,
            String unit,
            boolean lowerIsWorse,
            boolean ofConductors,
            Optional<String> alone) {}

    Corrector of(Requirement requirement) {
        return correctors.computeIfAbsent(
                new Alike(
                        requirement.laws(),
                        limitSet.referenceLengthOf(requirement),
                        requirement.valueUnit().text(),
                        requirement.limit().lower().isPresent(),
                        requirement.property() == Property.INSULATION_FAULTS,
                        requirement.particulars().leastRoundTripLoss().isPresent()
                                ? Optional.of(requirement.id())
                                : Optional.empty()),
                key -> new Corrector(evidence, limitSet, requirement));
    }
}
