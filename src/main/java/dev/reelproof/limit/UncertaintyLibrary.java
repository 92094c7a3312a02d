package dev.reelproof.limit;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All uncertainty models of an installation, every revision of each.
 *
 * @param all by id and then by revision
 */
public record UncertaintyLibrary(List<UncertaintyModel> all) {

    /**
     * Puts the models in order.
     *
     * @throws IllegalArgumentException when two have the same id and revision
     */
    public UncertaintyLibrary {
        all = all.stream()
                .sorted(Comparator.comparing(UncertaintyModel::id).thenComparingInt(UncertaintyModel::revision))
                .toList();
        for (int i = 1; i < all.size(); i++) {
            if (all.get(i).words().equals(all.get(i - 1).words())) {
                throw new IllegalArgumentException("there are two uncertainty models "
                        + all.get(i).words() + "; a changed model needs the next revision");
            }
        }
    }

    /**
     * A library of the given models.
     *
     * @throws IllegalArgumentException when two have the same id and revision
     */
    public static UncertaintyLibrary of(Collection<UncertaintyModel> models) {
        return new UncertaintyLibrary(List.copyOf(models));
    }

    /** The highest revision of a model that is effective on or before a day; empty when there is none. */
    public Optional<UncertaintyModel> current(String id, LocalDate day) {
        return all.stream()
                .filter(model -> model.id().equals(id) && !model.effective().isAfter(day))
                .max(Comparator.comparingInt(UncertaintyModel::revision));
    }
}
