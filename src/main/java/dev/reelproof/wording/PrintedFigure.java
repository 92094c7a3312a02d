package dev.reelproof.wording;

import dev.reelproof.judgement.Figure;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.quantity.Kind;
import org.jspecify.annotations.Nullable;

/**
 * A figure as it is printed.
 *
 * @param value what was compared with the limit
 * @param limit the limit there; of two bounds the nearer
 * @param upper whether that bound is the upper one
 * @param sense the same in words: at most, at least
 * @param margin how far the value lies on the good side, signed
 * @param distance the same without its sign
 * @param unit the unit of all these; empty for a count that is not per length
 * @param expanded the expanded uncertainty; null when it is not known
 * @param probability that the true value meets the limit; null when it is not known
 * @param unrounded the value before it was rounded by the rule; null where it was compared as it is
 */
public record PrintedFigure(
        String value,
        String limit,
        boolean upper,
        String sense,
        String margin,
        String distance,
        String unit,
        @Nullable String expanded,
        @Nullable String probability,
        @Nullable String unrounded) {
    private static final int PLACES_MORE_THAN_THE_LIMIT = 1;
    private static final int PLACES_OF_A_CURVE = 2;
    private static final int MOST_PLACES = 9;

    static PrintedFigure of(Requirement requirement, Figure figure, Wording wording) {
        boolean upper = isNearerToUpper(requirement.limit(), figure);
        int places = places(requirement, figure, upper);
        return new PrintedFigure(
                Figures.fixed(figure.judged(), places),
                Figures.fixed(figure.limit(), places),
                upper,
                wording.sense(upper),
                Figures.fixed(figure.margin(), places),
                Figures.fixed(Math.abs(figure.margin()), places),
                isCount(requirement) ? "" : figure.unit(),
                figure.uncertainty() == null
                        ? null
                        : Figures.uncertainty(figure.uncertainty().expanded()),
                figure.uncertainty() == null
                        ? null
                        : wording.probability(figure.uncertainty().probabilityOfConformity()),
                figure.value() == figure.judged() ? null : unrounded(figure, places));
    }

    /** The value with as many places as show that it is not the judged one. */
    private static String unrounded(Figure figure, int places) {
        int shown = places;
        while (shown < MOST_PLACES && Figures.printsAsZero(figure.value() - figure.judged(), shown)) {
            shown++;
        }
        return Figures.fixed(figure.value(), shown);
    }

    /** The sense of the limit as a sign. */
    public String senseSign() {
        return upper ? "≤" : "≥";
    }

    /** The expanded uncertainty with its sign; null when it is not known. */
    public @Nullable String uncertainty() {
        return expanded == null ? null : "± " + expanded;
    }

    /** Whether a limit is on a bare count, which needs neither unit nor places; one per length means nothing without. */
    static boolean isCount(Requirement requirement) {
        return requirement.unit().kind() == Kind.COUNT
                && requirement.unit().referredTo().isEmpty();
    }

    /**
     * A count has none, a curve two, any other limit one more than it is printed with; more while a margin that there is would print
     * as 0, so that nobody reads a failing value as a passing one.
     */
    private static int places(Requirement requirement, Figure figure, boolean upper) {
        int places = isCount(requirement)
                ? 0
                : bound(requirement.limit(), upper).decimals().orElse(PLACES_OF_A_CURVE - PLACES_MORE_THAN_THE_LIMIT)
                        + PLACES_MORE_THAN_THE_LIMIT;
        while (places < MOST_PLACES && figure.margin() != 0 && Figures.printsAsZero(figure.margin(), places)) {
            places++;
        }
        return places;
    }

    private static Bound bound(Limit limit, boolean upper) {
        return (upper ? limit.upper() : limit.lower()).orElseThrow();
    }

    private static boolean isNearerToUpper(Limit limit, Figure figure) {
        if (limit.lower().isEmpty() || limit.upper().isEmpty()) {
            return limit.lower().isEmpty();
        }
        double megahertz = figure.megahertz() == null ? Double.NaN : figure.megahertz();
        double toLower = Math.abs(limit.lower().orElseThrow().at(megahertz) - figure.limit());
        double toUpper = Math.abs(limit.upper().orElseThrow().at(megahertz) - figure.limit());
        return toUpper < toLower;
    }
}
