package dev.reelproof.limit;

import java.util.List;

/**
 * All constructions of an installation.
 *
 * @param all in the order in which they were read
 */
public record Constructions(List<Construction> all) {

    public Constructions {
        all = List.copyOf(all);
    }

    /**
     * The ids of the other limit sets that grade the construction of a product, in the order of the constructions.
     *
     * @param limitSet id of the set that the product is judged by
     * @param gauge the product's conductor gauge; empty when not stated
     */
    public List<String> othersOf(String limitSet, String gauge) {
        return all.stream()
                .filter(construction -> construction.grades().stream()
                        .anyMatch(grade -> grade.limitSet().equals(limitSet)))
                .flatMap(construction -> construction.grades().stream())
                .filter(grade -> !grade.limitSet().equals(limitSet) && grade.fits(gauge))
                .map(Construction.Grade::limitSet)
                .distinct()
                .toList();
    }
}
