package dev.reelproof.genealogy;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A stretch of a lot, counted from the beginning of the lot; a single place when both ends are the same.
 *
 * @param from its lower end in metres, or in kilograms for a lot measured by mass; zero or more
 * @param to its upper end, likewise; not below {@code from}
 */
public record Stretch(double from, double to) {

    // Units are converted with a few roundings of 1.1e-16; no counter tells a nanometre.
    private static final double ROUNDING = 1e-9;

    public Stretch {
        if (!(from >= 0 && to >= from && Double.isFinite(to))) {
            throw new IllegalArgumentException(
                    "a stretch lies between two places of a lot, the lower first, not between " + from + " and " + to);
        }
    }

    /** How long it is, in metres or kilograms. */
    public double length() {
        return to - from;
    }

    /**
     * The part of this that the other covers too; empty when there is none. Two that touch have one place in common, also where
     * rounding keeps them a billionth apart.
     */
    public Optional<Stretch> common(Stretch other) {
        double low = Math.max(from, other.from);
        double high = Math.min(to, other.to);
        if (low <= high) {
            return Optional.of(new Stretch(low, high));
        }
        double end = Math.min(Math.max(low, from), to);
        return low - high <= ROUNDING * Math.max(1, low) ? Optional.of(new Stretch(end, end)) : Optional.empty();
    }

    /** Whether this covers all of the other, rounding aside. */
    public boolean covers(Stretch other) {
        double slack = ROUNDING * Math.max(1, to);
        return from - slack <= other.from && other.to <= to + slack;
    }

    /** Whether it is more than a single place, rounding aside. */
    public boolean hasLength() {
        return length() > ROUNDING * Math.max(1, to);
    }

    /** The parts of this that none of the others covers, lowest first; gaps that rounding leaves are left out. */
    public List<Stretch> without(Collection<Stretch> others) {
        List<Stretch> left = new ArrayList<>();
        double from = this.from;
        for (Stretch other : union(others)) {
            if (other.from > from) {
                left.add(new Stretch(from, Math.min(other.from, to)));
            }
            from = Math.max(from, other.to);
            if (!(from < to)) {
                break;
            }
        }
        if (from < to) {
            left.add(new Stretch(from, to));
        }
        return left.stream().filter(Stretch::hasLength).toList();
    }

    /** Joins stretches: the same places in as few of them as can be, lowest first. */
    public static List<Stretch> union(Collection<Stretch> stretches) {
        List<Stretch> sorted = new ArrayList<>(stretches);
        sorted.sort(Comparator.comparingDouble(Stretch::from).thenComparingDouble(Stretch::to));
        List<Stretch> union = new ArrayList<>();
        for (Stretch stretch : sorted) {
            Stretch last = union.isEmpty() ? null : union.get(union.size() - 1);
            if (last != null && stretch.from <= last.to) {
                union.set(union.size() - 1, new Stretch(last.from, Math.max(last.to, stretch.to)));
            } else {
                union.add(stretch);
            }
        }
        return union;
    }
}
