package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Placement;
import org.jspecify.annotations.Nullable;

/** Reads the six columns in which an input holds its placement. */
final class PlacementColumns {
    private PlacementColumns() {}

    /** The placement, if any: the database holds all six columns or none. */
    static @Nullable Placement read(
            @Nullable Double from,
            @Nullable Double to,
            @Nullable String unit,
            @Nullable Double ontoFrom,
            @Nullable Double ontoTo,
            @Nullable String ontoUnit) {
        return from == null || to == null || unit == null || ontoFrom == null || ontoTo == null || ontoUnit == null
                ? null
                : new Placement(from, to, unit, ontoFrom, ontoTo, ontoUnit);
    }
}
