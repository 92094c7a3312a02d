package dev.reelproof.genealogy;

import dev.reelproof.quantity.Kind;
import java.util.Optional;

/**
 * Common practice, no source: which stretch of a parent became which stretch of a lot, as counted by length counters.
 *
 * <ul>
 *   <li>Equation: y = y0 + (x − x0) (y1 − y0)/(x1 − x0)
 *   <li>Symbols: x place along the lot, from x0 to x1; y place along the parent, from y0 to y1; in m, or in kg along a coil that is
 *       measured by mass
 *   <li>Range: x between x0 and x1; nothing is said of places outside
 *   <li>Source: linear between the two ends, common practice. The ratio (y1 − y0)/(x1 − x0) is the take-up: what a conductor is
 *       longer than its pair because of the lay, or a wire longer than the wire that it was drawn from
 *   <li>Edge cases: x0 above x1, or y0 above y1: the lot runs against its parent, as after rewinding. A stretch without length, of
 *       either, is refused
 *   <li>Known error: lay and drawing are not quite even along a run; length counters slip by some tenths of a per cent (from memory)
 * </ul>
 *
 * @param from the beginning on the lot, in {@code unit}; zero or more
 * @param to the end on the lot; not the beginning
 * @param unit a lot's unit of length or mass
 * @param onParentFrom the place on the parent that lies at {@code from}, in {@code onParentUnit}; zero or more
 * @param onParentTo the place on the parent that lies at {@code to}
 * @param onParentUnit a lot's unit of length or mass
 */
public record Placement(
        double from, double to, String unit, double onParentFrom, double onParentTo, String onParentUnit) {

    public Placement {
        check("from", from, "to", to, unit);
        check("onParentFrom", onParentFrom, "onParentTo", onParentTo, onParentUnit);
    }

    private static void check(String beginning, double from, String end, double to, String unit) {
        Amount.baseOf(from, unit);
        if (!(from >= 0 && to >= 0 && Double.isFinite(from) && Double.isFinite(to))) {
            throw new IllegalArgumentException("a position lies at zero or more, not at " + beginning + " " + from
                    + " and " + end + " " + to + " " + unit);
        }
        if (!(from < to || to < from)) {
            throw new IllegalArgumentException(
                    "a position has a length; '" + beginning + "' and '" + end + "' are both " + from + " " + unit);
        }
    }

    /** Whether it is a stretch of length or of mass on the lot. */
    public Kind kind() {
        return Amount.kindOf(unit);
    }

    /** Whether it is a stretch of length or of mass on the parent. */
    public Kind kindOnParent() {
        return Amount.kindOf(onParentUnit);
    }

    /** The stretch of the lot. */
    public Stretch stretch() {
        return between(Amount.baseOf(from, unit), Amount.baseOf(to, unit));
    }

    /** The stretch of the parent. */
    public Stretch stretchOfParent() {
        return between(Amount.baseOf(onParentFrom, onParentUnit), Amount.baseOf(onParentTo, onParentUnit));
    }

    private static Stretch between(double one, double other) {
        return new Stretch(Math.min(one, other), Math.max(one, other));
    }

    /** Whether the lot runs against its parent. */
    public boolean isReversed() {
        return (from < to) != (onParentFrom < onParentTo);
    }

    /** Metres (or kilograms) of the parent in one metre (or kilogram) of the lot. */
    public double takeUp() {
        return stretchOfParent().length() / stretch().length();
    }

    /** The stretch of the parent that a stretch of the lot came from; empty when it lies elsewhere. */
    public Optional<Stretch> onParent(Stretch onLot) {
        return stretch().common(onLot).map(common -> map(common, stretch(), stretchOfParent()));
    }

    /** The stretch of the lot that a stretch of the parent became; empty when it went elsewhere. */
    public Optional<Stretch> onLot(Stretch onParent) {
        return stretchOfParent().common(onParent).map(common -> map(common, stretchOfParent(), stretch()));
    }

    private Stretch map(Stretch part, Stretch whole, Stretch image) {
        double low = place(part.from(), whole, image);
        double high = place(part.to(), whole, image);
        return between(low, high);
    }

    private double place(double x, Stretch whole, Stretch image) {
        double share = (x - whole.from()) / whole.length();
        double along = isReversed() ? 1 - share : share;
        // So written, both ends are met exactly, and rounding leads beyond neither.
        double y = image.from() * (1 - along) + image.to() * along;
        return Math.min(Math.max(y, image.from()), image.to());
    }
}
