package dev.reelproof.limit.file;

import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Requirement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Reads the requirements of a limit set, and checks each against the set and against those before it. */
final class RequirementsReader {
    private final RequirementReader reader;

    RequirementsReader(RequirementReader reader) {
        this.reader = reader;
    }

    /**
     * The requirements in order; those with faults are left out, their faults noted.
     *
     * @param setPairs the pair counts of the set; absent when its own were refused
     */
    List<Requirement> read(Entry root, @Nullable PairCount setPairs) {
        List<Requirement> requirements = new ArrayList<>();
        for (Entry written : root.list("requirements")) {
            for (Entry entry : TableReader.oneForEachPointWithoutInterpolation(written)) {
                Requirement requirement = reader.read(entry);
                if (requirement != null) {
                    if (setPairs != null) {
                        checkWithin(setPairs, requirement, entry);
                    }
                    checkUnique(requirement, requirements, entry);
                    requirements.add(requirement);
                }
            }
        }
        return requirements;
    }

    private static void checkWithin(PairCount setPairs, Requirement requirement, Entry entry) {
        requirement.pairs().ifPresent(pairs -> {
            if (!(setPairs.holds(pairs.from()) && setPairs.holds(pairs.to()))) {
                entry.fault(
                        "pairs",
                        "the requirement is for " + pairs.from() + " to " + pairs.to() + " pairs, but the set is for "
                                + setPairs.from() + " to " + setPairs.to());
            }
        });
    }

    private static void checkUnique(Requirement requirement, List<Requirement> requirementsBefore, Entry entry) {
        boolean taken = requirementsBefore.stream()
                .anyMatch(
                        before -> before.id().equals(requirement.id()) && overlap(before.pairs(), requirement.pairs()));
        if (taken) {
            entry.fault("there is another requirement '" + requirement.id()
                    + "' for the same number of pairs; give one of them an id of its own, or both pairs"
                    + " that do not overlap");
        }
    }

    /** Whether two requirements hold for one number of pairs; an absent range is any number. */
    private static boolean overlap(Optional<PairCount> one, Optional<PairCount> other) {
        return one.isEmpty() || other.isEmpty() || one.get().overlaps(other.get());
    }
}
