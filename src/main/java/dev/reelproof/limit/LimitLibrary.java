package dev.reelproof.limit;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All limit sets of an installation, every revision of each.
 *
 * @param all by id and then by revision
 */
public record LimitLibrary(List<LimitSet> all) {

    /**
     * Puts the sets in order.
     *
     * @throws IllegalArgumentException when two have the same id and revision
     */
    public LimitLibrary {
        all = all.stream()
                .sorted(Comparator.comparing(LimitSet::id).thenComparingInt(LimitSet::revision))
                .toList();
        for (int i = 1; i < all.size(); i++) {
            LimitSet set = all.get(i);
            if (set.id().equals(all.get(i - 1).id())
                    && set.revision() == all.get(i - 1).revision()) {
                throw new IllegalArgumentException("there are two limit sets " + set.id() + " revision "
                        + set.revision() + "; a changed set needs the next revision");
            }
        }
    }

    /**
     * A library of the given sets.
     *
     * @throws IllegalArgumentException when two have the same id and revision
     */
    public static LimitLibrary of(Collection<LimitSet> sets) {
        return new LimitLibrary(List.copyOf(sets));
    }

    /** The highest revision of a set that is effective on or before a day; empty when there is none. */
    public Optional<LimitSet> current(String id, LocalDate day) {
        return all.stream()
                .filter(set -> set.id().equals(id) && !set.effective().isAfter(day))
                .max(Comparator.comparingInt(LimitSet::revision));
    }

    /** One revision of a set; empty when there is none. */
    public Optional<LimitSet> revision(String id, int revision) {
        return all.stream()
                .filter(set -> set.id().equals(id) && set.revision() == revision)
                .findFirst();
    }
}
