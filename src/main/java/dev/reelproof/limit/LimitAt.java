package dev.reelproof.limit;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a limit set says of a property at a frequency.
 *
 * @param requirement the requirement that says it
 * @param megahertz the frequency, MHz; empty where the limit has none
 * @param requirements the ids of all requirements that could have been meant, that on each value by itself first
 */
public record LimitAt(Requirement requirement, Optional<Double> megahertz, List<String> requirements) {

    public LimitAt {
        requirements = List.copyOf(requirements);
    }

    /**
     * The first requirement on a property that has a limit at a frequency; empty when the set has none on that property.
     *
     * <p>That on each value by itself comes before one on a statistic, and a requirement of that id before those of a property.
     *
     * @param name a requirement's id, or a property's
     * @param asked the frequency, MHz; empty when none is meant
     * @param productPairs only what holds for so many pairs; empty for all
     * @throws IllegalArgumentException when there is no limit at that frequency; the message says where there is one
     */
    public static Optional<LimitAt> of(
            LimitSet set, String name, Optional<Double> asked, Optional<Integer> productPairs) {
        List<Requirement> meant = set.requirements().stream()
                .filter(requirement -> requirement.id().equals(name)
                        || requirement.property().id().equals(name))
                .filter(requirement -> productPairs.isEmpty() || requirement.holdsFor(productPairs.get()))
                .sorted(Comparator.comparing(
                                (Requirement requirement) -> !requirement.id().equals(name))
                        .thenComparing(requirement -> requirement.statistic() != Statistic.INDIVIDUAL))
                .toList();
        if (meant.isEmpty()) {
            return Optional.empty();
        }
        Requirement chosen = meant.stream()
                .filter(requirement -> isAt(requirement.domain(), asked))
                .findFirst()
                .orElseThrow(() -> outside(meant.get(0), asked));
        return Optional.of(new LimitAt(
                chosen,
                frequency(chosen.domain(), asked),
                meant.stream().map(Requirement::id).distinct().toList()));
    }

    private static boolean isAt(Domain domain, Optional<Double> megahertz) {
        if (domain instanceof Domain.Range range) {
            return megahertz.isPresent() && megahertz.get() >= range.from() && megahertz.get() <= range.to();
        }
        return !(domain instanceof Domain.Spot spot) || megahertz.isEmpty() || megahertz.get() == spot.megahertz();
    }

    private static Optional<Double> frequency(Domain domain, Optional<Double> asked) {
        if (domain instanceof Domain.Spot spot) {
            return Optional.of(spot.megahertz());
        }
        return domain instanceof Domain.Range ? asked : Optional.empty();
    }

    private static IllegalArgumentException outside(Requirement requirement, Optional<Double> asked) {
        String range = requirement.domain() instanceof Domain.Range domain
                ? "from " + domain.from() + " to " + domain.to() + " MHz"
                : "at " + ((Domain.Spot) requirement.domain()).megahertz() + " MHz";
        return new IllegalArgumentException(requirement.id() + " is limited " + range
                + asked.map(f -> ", not at " + f + " MHz").orElse("; give a frequency"));
    }
}
