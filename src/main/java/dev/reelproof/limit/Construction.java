package dev.reelproof.limit;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A construction of cable and the limit sets that grade it.
 *
 * @param id its name, such as {@code four-pair-unscreened}
 * @param title in words
 * @param grades in the order in which they are offered
 */
public record Construction(String id, String title, List<Grade> grades) {

    /**
     * A limit set that grades the construction.
     *
     * @param limitSet id of the set
     * @param gauge the conductor gauge that it holds for, as products state it; empty for any
     */
    public record Grade(String limitSet, Optional<String> gauge) {

        public Grade {
            if (limitSet == null || limitSet.isBlank()) {
                throw new IllegalArgumentException("a grade names its limit set");
            }
        }

        /** Whether it holds for a product's gauge; an unstated gauge fits only a set that is bound to none. */
        public boolean fits(String productGauge) {
            return gauge.isEmpty() || plain(gauge.get()).equals(plain(productGauge));
        }

        private static String plain(String gauge) {
            return gauge.replaceAll("\\s", "").toLowerCase(Locale.ROOT);
        }
    }

    public Construction {
        if (id == null || id.isBlank() || title == null || title.isBlank()) {
            throw new IllegalArgumentException("a construction has a name and a title");
        }
        grades = List.copyOf(grades);
    }
}
