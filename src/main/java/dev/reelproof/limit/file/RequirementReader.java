package dev.reelproof.limit.file;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.TemperatureWindow;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/** Reads one requirement of a limit set. */
final class RequirementReader {
    private static final String PERCENT = "%";

    private final BiConsumer<String, Map<String, Double>> lawCheck;

    RequirementReader(BiConsumer<String, Map<String, Double>> lawCheck) {
        this.lawCheck = lawCheck;
    }

    /** The requirement, or none where a fault was noted. */
    @Nullable
    Requirement read(Entry entry) {
        int faultsBefore = entry.faults().size();
        Property property = Property.named(entry.text("property"));
        Statistic statistic = entry.word(Statistic.class, "statistic", Statistic.INDIVIDUAL);
        Scope scope = entry.word(Scope.class, "scope", Scope.CORE);
        if (entry.has("table") && !TableReader.isSound(entry)) {
            return null;
        }
        Limit limit = LimitReader.limit(entry);
        Domain domain = LimitReader.domain(entry, property, limit);
        ReadingUnit unit = unit(entry, property, statistic);
        List<LawSpec> laws = laws(entry);
        checkDenominator(entry, property);
        checkScope(entry, property, scope);
        Optional<PairCount> pairs = entry.pairs("pairs");
        Optional<PairCount> unitPairs = entry.pairs("unit-pairs");
        Optional<TemperatureWindow> window = temperatureWindow(entry, property);
        Particulars particulars = ParticularsReader.read(entry, property, statistic, unit);
        Optional<DecisionRule> decisionRule = DecisionRuleReader.read(entry);
        if (entry.faults().size() > faultsBefore || limit == null || domain == null || unit == null) {
            return null;
        }
        return new Requirement(
                id(entry),
                property,
                statistic,
                limit,
                domain,
                unit,
                laws,
                entry.textIfAny("denominator"),
                scope,
                pairs,
                unitPairs,
                window,
                entry.source(),
                entry.textIfAny("condition"),
                particulars,
                decisionRule);
    }

    /** The id as written, else made of the property and the statistic. */
    static String id(Entry entry) {
        return entry.textIfAny("id").orElseGet(() -> {
            Statistic statistic = entry.word(Statistic.class, "statistic", Statistic.INDIVIDUAL);
            String property = Property.named(entry.text("property")).id();
            return statistic == Statistic.INDIVIDUAL ? property : property + "-" + statistic.word();
        });
    }

    /** The unit of a limit, or none with a fault noted where it cannot be read; one that does not fit is a fault too. */
    static @Nullable ReadingUnit unit(Entry entry, Property property, Statistic statistic) {
        ReadingUnit unit = entry.attempt("unit", () -> ReadingUnit.parse(entry.text("unit")));
        String expected = statistic.isInPercent() ? PERCENT : property.canonicalUnit();
        if (unit != null && !unit.numerator().equals(expected)) {
            String limited =
                    switch (statistic) {
                        case RMS_DEVIATION -> "a deviation from the mean";
                        case PERCENT_OF_PAIRS -> "a percentage of pairs";
                        default -> property.toString();
                    };
            entry.fault(
                    "unit",
                    "the unit '" + unit + "' does not fit " + limited + "; it must be " + expected
                            + (expected.equals(PERCENT) ? "" : ", alone or with a length such as " + expected + "/km"));
        }
        return unit;
    }

    private List<LawSpec> laws(Entry requirement) {
        List<LawSpec> laws = new ArrayList<>();
        for (Entry entry : requirement.list("corrections")) {
            Map<String, Double> parameters = new LinkedHashMap<>();
            entry.node().properties().forEach(field -> {
                if (!field.getKey().equals("law")) {
                    parameters.put(field.getKey(), field.getValue().doubleValue());
                }
            });
            LawSpec law = new LawSpec(entry.text("law"), parameters);
            entry.attempt(() -> {
                lawCheck.accept(law.name(), law.parameters());
                return law;
            });
            laws.add(law);
        }
        return laws;
    }

    private static void checkDenominator(Entry entry, Property property) {
        boolean unbalance =
                property == Property.RESISTANCE_UNBALANCE || property == Property.RESISTANCE_UNBALANCE_BETWEEN_PAIRS;
        if (unbalance && !entry.has("denominator")) {
            entry.fault(property + " needs a denominator (minimum, sum or mean): its limit means nothing without");
        }
        if (!unbalance) {
            entry.refuse("denominator", property + " has no denominator; only a resistance unbalance has");
        }
    }

    private static void checkScope(Entry entry, Property property, Scope scope) {
        boolean combinations =
                property.sites().contains(Site.COMBINATION) || property.sites().contains(Site.ORDERED_COMBINATION);
        if (scope != Scope.CORE && !combinations) {
            entry.fault("scope", property + " is not of a combination of pairs; only combinations have a scope");
        }
        if (scope == Scope.CORE) {
            entry.refuse(
                    "unit-pairs",
                    "the scope is the core; give the scope within-unit, adjacent-units or nonadjacent-units");
        }
    }

    private static Optional<TemperatureWindow> temperatureWindow(Entry entry, Property property) {
        if (!entry.has("temperature-window")) {
            return Optional.empty();
        }
        Entry window = entry.at("temperature-window");
        boolean warmerPassStands = window.node().path("warmer-pass-stands").asBoolean(false);
        boolean fallsAsItGetsWarmer = property == Property.INSULATION_RESISTANCE;
        if (warmerPassStands && !(fallsAsItGetsWarmer && entry.text("limit").equals(LimitReader.AT_LEAST))) {
            window.fault(
                    "warmer-pass-stands",
                    "only insulation-resistance is known to fall as it gets warmer, so that a pass above the window stands"
                            + " against a limit at-least");
        }
        Temperature at = window.temperature("at");
        return at == null
                ? Optional.empty()
                : Optional.of(new TemperatureWindow(at, window.valueInFixedUnit("within"), warmerPassStands));
    }
}
