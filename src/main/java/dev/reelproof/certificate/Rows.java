package dev.reelproof.certificate;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Kind;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The rows of a certificate's table: one a finding. */
final class Rows {
    private static final int CURVE_PLACES = 2;
    private static final int EXTRA_PLACES = 1;
    private static final String CAUTION = "Caution:";

    private Rows() {}

    static List<CertificateContent.Row> of(Judgement judgement, LimitSet limitSet, Product product) {
        return judgement.findings().stream()
                .map(finding -> row(finding, requirement(finding, limitSet, product)))
                .toList();
    }

    /** The requirement that a finding speaks of; of several with its id, the one that holds for the product. */
    static Requirement requirement(Finding finding, LimitSet limitSet, Product product) {
        return limitSet.requirement(finding.requirement(), product.pairs())
                .filter(requirement -> requirement.property() == finding.property())
                .orElseThrow(() -> new IllegalArgumentException("limit set " + limitSet.id() + " revision "
                        + limitSet.revision() + " has no requirement '" + finding.requirement() + "' for "
                        + finding.property() + " of product " + product.id()));
    }

    private static CertificateContent.Row row(Finding finding, Requirement requirement) {
        Figure figure = finding.figure();
        if (figure == null) {
            throw new IllegalArgumentException("requirement '" + finding.requirement()
                    + "' is said to pass but has no figure; a certificate states the worst value of each requirement");
        }
        boolean count = requirement.unit().kind() == Kind.COUNT
                && requirement.unit().referredTo().isEmpty();
        int places = places(requirement, figure, count);
        return new CertificateContent.Row(
                requirement.id(),
                requirement.property().id(),
                title(requirement),
                Words.plain(requirement.property()),
                limit(requirement, figure, count),
                Words.fixed(figure.judged(), places),
                Words.fixed(figure.limit(), places),
                Words.fixed(figure.margin(), places),
                count ? "" : figure.unit(),
                Words.where(finding.property(), figure),
                finding.points(),
                finding.outcome().word(),
                notes(finding, requirement));
    }

    private static String title(Requirement requirement) {
        String title = Words.title(requirement.property());
        String statistic =
                switch (requirement.statistic()) {
                    case INDIVIDUAL -> "";
                    case MEAN -> ", average";
                    case RMS -> ", rms";
                    case RMS_DEVIATION -> ", rms deviation";
                    case MEAN_MINUS_SIGMA -> ", mean less one sigma";
                    case MAXIMUM -> ", greatest";
                    case PERCENT_OF_PAIRS -> ", share of pairs";
                };
        return title + statistic + scope(requirement.scope());
    }

    static String scope(Scope scope) {
        return switch (scope) {
            case CORE -> "";
            case WITHIN_UNIT -> ", within a unit";
            case ADJACENT_UNITS -> ", adjacent units";
            case NONADJACENT_UNITS -> ", units apart";
        };
    }

    /** The condition of a test without its word of caution, which speaks to the bench, and without its full stop. */
    private static String condition(String condition) {
        int caution = condition.indexOf(CAUTION);
        String rest = (caution < 0 ? condition : condition.substring(0, caution)).strip();
        return rest.endsWith(".") ? rest.substring(0, rest.length() - 1) : rest;
    }

    /** One place more than the limit is printed with, so that a margin can be seen; a count has none. */
    private static int places(Requirement requirement, Figure figure, boolean count) {
        if (count) {
            return 0;
        }
        double megahertz = megahertz(figure);
        return nearer(requirement.limit(), figure, megahertz).decimals().orElse(CURVE_PLACES - EXTRA_PLACES)
                + EXTRA_PLACES;
    }

    private static double megahertz(Figure figure) {
        return figure.megahertz() == null ? Double.NaN : figure.megahertz();
    }

    /** The bound that the figure was nearer to. */
    private static Bound nearer(Limit limit, Figure figure, double megahertz) {
        if (limit.lower().isEmpty()) {
            return limit.upper().orElseThrow();
        }
        if (limit.upper().isEmpty()) {
            return limit.lower().orElseThrow();
        }
        double toLower = Math.abs(limit.lower().orElseThrow().at(megahertz) - figure.limit());
        double toUpper = Math.abs(limit.upper().orElseThrow().at(megahertz) - figure.limit());
        return toLower <= toUpper ? limit.lower().orElseThrow() : limit.upper().orElseThrow();
    }

    private static String limit(Requirement requirement, Figure figure, boolean count) {
        double megahertz = megahertz(figure);
        Limit limit = requirement.limit();
        String unit = count ? "" : " " + requirement.unit().text();
        String lower = limit.lower().map(bound -> formula(bound, megahertz)).orElse(null);
        String upper = limit.upper().map(bound -> formula(bound, megahertz)).orElse(null);
        String figures = lower == null ? "≤ " + upper : upper == null ? "≥ " + lower : lower + " to " + upper;
        return figures + unit + domain(requirement.domain());
    }

    private static String formula(Bound bound, double megahertz) {
        return bound.formula(megahertz).replace('-', '−');
    }

    private static String domain(Domain domain) {
        if (domain instanceof Domain.Range range) {
            return ", " + Words.range(range.from(), range.to());
        }
        if (domain instanceof Domain.Spot spot) {
            return ", at " + Words.frequency(spot.megahertz());
        }
        return "";
    }

    private static List<String> notes(Finding finding, Requirement requirement) {
        List<String> notes = new ArrayList<>();
        if (finding.figure().uncertainty() != null) {
            notes.add(Words.uncertainty(finding.figure()));
        }
        requirement
                .unitPairs()
                .map(range -> range.from() == range.to()
                        ? "units of " + range.from() + " pairs"
                        : "units of " + range.from() + " to " + range.to() + " pairs")
                .ifPresent(notes::add);
        if (finding.figure().derived()) {
            notes.add("computed from measured parts");
        }
        if (!requirement.laws().isEmpty()) {
            notes.add("corrected: " + requirement.laws().stream().map(Rows::law).collect(Collectors.joining(", ")));
        }
        if (!finding.varyingPairs().isEmpty() && finding.reason() == null) {
            notes.add("under the allowance of pairs that may vary, left out: "
                    + (finding.varyingPairs().size() == 1 ? "pair " : "pairs ")
                    + finding.varyingPairs().stream().map(String::valueOf).collect(Collectors.joining(", ")));
        }
        if (finding.reason() != null) {
            notes.add(finding.reason());
        }
        requirement
                .condition()
                .map(Rows::condition)
                .filter(condition -> !condition.isEmpty())
                .ifPresent(notes::add);
        return notes;
    }

    /** A law as a limit set names it, hyphens as spaces, with its coefficients by name. */
    private static String law(LawSpec law) {
        String words = law.name().replace('-', ' ');
        Map<String, Double> inOrder = new TreeMap<>(law.parameters());
        return inOrder.isEmpty()
                ? words
                : words + " ("
                        + inOrder.entrySet().stream()
                                .map(entry -> entry.getKey().replace('-', ' ') + ": "
                                        + BigDecimal.valueOf(entry.getValue())
                                                .stripTrailingZeros()
                                                .toPlainString())
                                .collect(Collectors.joining(", "))
                        + ")";
    }
}
