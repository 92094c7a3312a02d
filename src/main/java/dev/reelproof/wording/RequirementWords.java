package dev.reelproof.wording;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Property;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The names of properties and requirements. */
final class RequirementWords {
    private final Catalogue words;

    RequirementWords(Catalogue words) {
        this.words = words;
    }

    /** The trade's name of a property. */
    String title(Property property) {
        return words.text("property." + property.id() + ".title");
    }

    /** The property in plain words. */
    String plain(Property property) {
        return words.text("property." + property.id() + ".plain");
    }

    /** The property with what is limited of it: statistic, combinations, units, frequency. */
    String title(Requirement requirement) {
        return title(requirement.property()) + qualifiers(requirement);
    }

    /** What distinguishes a requirement from others on its property, each after a comma; empty for none. */
    String qualifiers(Requirement requirement) {
        StringBuilder qualifiers = new StringBuilder();
        if (requirement.statistic() != Statistic.INDIVIDUAL) {
            append(qualifiers, words.text("statistic." + requirement.statistic().word()));
        }
        if (requirement.particulars().per() == Per.UNIT) {
            append(qualifiers, words.text("per-unit." + requirement.scope().word()));
        } else if (requirement.scope() != Scope.CORE) {
            append(qualifiers, words.text("scope." + requirement.scope().word()));
        }
        requirement.unitPairs().ifPresent(range -> append(qualifiers, unitsOf(range)));
        if (requirement.domain() instanceof Domain.Spot spot) {
            append(qualifiers, words.text("range.at", "frequency", Figures.frequency(spot.megahertz())));
        }
        return qualifiers.toString();
    }

    private static void append(StringBuilder qualifiers, String one) {
        qualifiers.append(", ").append(one);
    }

    private String unitsOf(PairCount range) {
        return range.from() == range.to()
                ? words.text("units.of", "pairs", String.valueOf(range.from()))
                : words.text("units.of-range", "from", String.valueOf(range.from()), "to", String.valueOf(range.to()));
    }

    /** A whole limit, a part for each stretch of frequency that has a formula of its own. */
    List<LimitPart> limitParts(Requirement requirement) {
        String unit = PrintedFigure.isCount(requirement)
                ? ""
                : " " + requirement.unit().text();
        if (!(requirement.domain() instanceof Domain.Range range)) {
            return List.of(
                    new LimitPart(figures(requirement.limit(), Double.NaN) + unit, domain(requirement.domain())));
        }
        List<LimitPart> parts = new ArrayList<>();
        String last = "";
        double began = range.from();
        List<Double> joints = joints(requirement.limit(), range);
        for (int i = 0; i + 1 < joints.size(); i++) {
            String figures = figures(requirement.limit(), Math.sqrt(joints.get(i) * joints.get(i + 1)));
            boolean goesOn = figures.equals(last);
            if (goesOn) {
                parts.remove(parts.size() - 1);
            } else {
                began = joints.get(i);
            }
            parts.add(new LimitPart(figures + unit, range(began, joints.get(i + 1))));
            last = figures;
        }
        return parts;
    }

    /** The ends of a range and the frequencies between where a formula of the limit gives way to the next. */
    private static List<Double> joints(Limit limit, Domain.Range range) {
        TreeSet<Double> joints = new TreeSet<>(List.of(range.from(), range.to()));
        Stream.of(limit.lower(), limit.upper())
                .flatMap(Optional::stream)
                .filter(Bound.Curve.class::isInstance)
                .flatMap(bound -> ((Bound.Curve) bound).segments().stream())
                .map(Segment::to)
                .filter(joint -> joint > range.from() && joint < range.to())
                .forEach(joints::add);
        return List.copyOf(joints);
    }

    private String figures(Limit limit, double megahertz) {
        return words.text(
                "limit." + limit.sense(),
                "lower",
                limit.lower().map(bound -> formula(bound, megahertz)).orElse(null),
                "upper",
                limit.upper().map(bound -> formula(bound, megahertz)).orElse(null));
    }

    private static String formula(Bound bound, double megahertz) {
        return bound.formula(megahertz).replace('-', '−');
    }

    /** Where along frequency a limit holds; empty where frequency plays no part. */
    private String domain(Domain domain) {
        if (domain instanceof Domain.Range range) {
            return range(range.from(), range.to());
        }
        return domain instanceof Domain.Spot spot
                ? words.text("range.at", "frequency", Figures.frequency(spot.megahertz()))
                : "";
    }

    /** A range of frequencies, the unit once where both ends share it. */
    private String range(double from, double to) {
        return words.text(
                "range",
                "from",
                from >= 1 ? Figures.frequencyInMegahertz(from) : Figures.frequency(from),
                "to",
                Figures.frequency(to));
    }

    /** A decision rule in few words. */
    String rule(DecisionRule rule) {
        return rule.needsUncertainty()
                ? words.text(key("rule.", rule), "multiple", Figures.step(rule.multiple(), null))
                : words.text(key("rule.", rule));
    }

    private static String key(String prefix, DecisionRule rule) {
        return prefix + rule.form().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    /** A decision rule in sentences. */
    String ruleInFull(DecisionRule rule, boolean rounded) {
        String key = key("rule-in-full.", rule) + (rounded ? "-rounded" : "");
        return words.text(key, "rule", rule(rule), "clause", rule.clause());
    }
}
