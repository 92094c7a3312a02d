package dev.reelproof.limit.file;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.measurement.Property;
import org.jspecify.annotations.Nullable;

/** Reads the limit of a requirement, and where along frequency it holds. */
final class LimitReader {
    static final String AT_LEAST = "at-least";
    static final String AT_MOST = "at-most";
    static final String BETWEEN = "between";

    private LimitReader() {}

    /** The limit, or none with a fault noted. A table is known to be sound. */
    static @Nullable Limit limit(Entry entry) {
        String sense = entry.text("limit");
        if (sense.equals(BETWEEN)) {
            return between(entry);
        }
        entry.refuse("lower", "only a limit 'between' has lower and upper; '" + sense + "' has a value");
        entry.refuse("upper", "only a limit 'between' has lower and upper; '" + sense + "' has a value");
        if (entry.has("table")) {
            return oneSided(sense, TableReader.curve(entry.at("table")));
        }
        if (entry.has("value") == entry.has("segments")) {
            entry.fault("a limit '" + sense + "' needs a value or segments, "
                    + (entry.has("value") ? "not both" : "and has neither"));
            return null;
        }
        Bound bound = entry.has("value") ? entry.constant("value") : CurveReader.read(entry, "segments");
        return bound == null ? null : oneSided(sense, bound);
    }

    static Limit oneSided(String sense, Bound bound) {
        return sense.equals(AT_MOST) ? Limit.atMost(bound) : Limit.atLeast(bound);
    }

    private static @Nullable Limit between(Entry entry) {
        entry.refuse("value", "a limit 'between' has lower and upper, not a value");
        entry.refuse("segments", "a limit 'between' has lower and upper; write a two-sided curve as two requirements");
        if (!entry.has("lower") || !entry.has("upper")) {
            entry.fault("a limit 'between' needs lower and upper");
            return null;
        }
        Bound.Constant lower = entry.constant("lower");
        Bound.Constant upper = entry.constant("upper");
        if (!(lower.value() <= upper.value())) {
            entry.fault(
                    "lower",
                    "the lower figure " + entry.text("lower") + " is above the upper figure " + entry.text("upper"));
            return null;
        }
        return Limit.between(lower, upper);
    }

    /**
     * Where a limit holds, or nothing with a fault noted: at one frequency, over the range of its curve, or without frequency.
     *
     * @param limit the limit as read; absent when it was refused
     */
    static @Nullable Domain domain(Entry entry, Property property, @Nullable Limit limit) {
        boolean curve = entry.has("segments") || entry.has("table");
        boolean spot = entry.has("at");
        if (curve && spot) {
            entry.fault("either 'at' (one frequency) or 'segments' (a range), not both");
            return null;
        }
        if ((curve || spot) && !property.isSweep()) {
            entry.fault(
                    spot ? "at" : entry.has("table") ? "table" : "segments",
                    property + " is not measured against frequency; give a value alone");
            return null;
        }
        if (!curve && !spot && !property.isScalar()) {
            entry.fault(property + " is measured against frequency; give 'segments' (a range) or 'at' (one frequency)");
            return null;
        }
        if (spot) {
            return spot(entry);
        }
        return curve ? rangeOf(limit) : new Domain.NoFrequency();
    }

    private static @Nullable Domain spot(Entry entry) {
        double megahertz = entry.megahertz("at");
        if (!(megahertz > 0)) {
            entry.fault("at", "a frequency must be positive, not " + entry.text("at"));
            return null;
        }
        return entry.attempt("at", () -> new Domain.Spot(megahertz));
    }

    /** The range of a limit's curve; none where the limit was refused or has none, which is a fault already. */
    private static @Nullable Domain rangeOf(@Nullable Limit limit) {
        return limit != null && limit.lower().or(limit::upper).orElseThrow() instanceof Bound.Curve curve
                ? new Domain.Range(curve.from(), curve.to())
                : null;
    }
}
