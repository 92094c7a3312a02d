package dev.reelproof.limit.file;

import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads how many pairs may vary from the requirements of a limit set, and how far. */
final class AllowanceReader {
    private AllowanceReader() {}

    /** The allowance of a set; empty where it states none. */
    static Optional<Allowance> read(Entry root, List<Requirement> requirements) {
        if (!root.has("allowance")) {
            return Optional.empty();
        }
        Entry entry = root.at("allowance");
        return Optional.of(new Allowance(steps(entry), ceilings(entry, requirements), entry.source()));
    }

    private static List<Allowance.Step> steps(Entry allowance) {
        List<Allowance.Step> steps = new ArrayList<>();
        for (Entry entry : allowance.list("steps")) {
            entry.pairs("pairs").ifPresent(range -> {
                if (steps.stream().anyMatch(step -> step.pairs().overlaps(range))) {
                    entry.fault("pairs", "the pair counts overlap those of a step before");
                } else {
                    steps.add(new Allowance.Step(range, entry.whole("may-vary")));
                }
            });
        }
        return steps;
    }

    private static Map<Property, Bound.Constant> ceilings(Entry allowance, List<Requirement> requirements) {
        Map<Property, Bound.Constant> ceilings = new EnumMap<>(Property.class);
        for (Entry entry : allowance.list("ceilings")) {
            // Where a requirement was refused, its ceiling would seem to limit a property without requirement.
            if (allowance.faults().isEmpty()) {
                ceiling(entry, requirements, ceilings);
            }
        }
        return ceilings;
    }

    private static void ceiling(Entry entry, List<Requirement> requirements, Map<Property, Bound.Constant> ceilings) {
        Property property = Property.named(entry.text("property"));
        List<Requirement> limited = requirements.stream()
                .filter(requirement -> requirement.property() == property)
                .toList();
        if (limited.isEmpty()) {
            entry.fault("property", "no requirement of the set limits " + property);
            return;
        }
        for (Requirement requirement : limited) {
            if (!requirement.unit().text().equals(entry.text("unit").trim())) {
                entry.fault(
                        "unit",
                        "the unit must be that of the requirement '" + requirement.id() + "', " + requirement.unit());
                return;
            }
            if (!requirement.limit().sense().equals(entry.text("limit"))) {
                entry.fault(
                        "limit",
                        "the limit must be that of the requirement '" + requirement.id() + "', "
                                + requirement.limit().sense());
                return;
            }
        }
        if (ceilings.putIfAbsent(property, entry.constant("value")) != null) {
            entry.fault("property", "a ceiling for " + property + " was given before");
        }
    }
}
