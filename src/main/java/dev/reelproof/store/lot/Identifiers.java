package dev.reelproof.store.lot;

import dev.reelproof.genealogy.LotId;
import java.util.Collection;

/** Identifiers as statements are bound with them. */
final class Identifiers {
    private Identifiers() {}

    static String[] of(Collection<LotId> ids) {
        return ids.stream().map(LotId::value).toArray(String[]::new);
    }
}
