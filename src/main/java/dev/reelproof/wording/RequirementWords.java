package dev.reelproof.wording;

import dev.reelproof.judgement.Figure;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Property;

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

    /** A limit in words: the figure or, of a curve, the formula where the figure was found, with unit and range. */
    String limit(Requirement requirement, Figure figure) {
        double megahertz = figure.megahertz() == null ? Double.NaN : figure.megahertz();
        Limit limit = requirement.limit();
        String figures = words.text(
                "limit." + limit.sense(),
                "lower",
                limit.lower().map(bound -> formula(bound, megahertz)).orElse(null),
                "upper",
                limit.upper().map(bound -> formula(bound, megahertz)).orElse(null));
        String unit = PrintedFigure.isCount(requirement)
                ? ""
                : " " + requirement.unit().text();
        String where = domain(requirement.domain());
        return figures + unit + (where.isEmpty() ? "" : ", " + where);
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
    String ruleInFull(DecisionRule rule) {
        return words.text(key("rule-in-full.", rule), "rule", rule(rule), "clause", rule.clause());
    }
}
