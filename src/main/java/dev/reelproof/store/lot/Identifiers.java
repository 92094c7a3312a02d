package dev.reelproof.store.lot;

import dev.reelproof.genealogy.LotId;
import java.util.Collection;

/** Identifiers as statements are bound with them. */
public final class Identifiers {
    private Identifiers() {}

    public static String[] of(Collection<LotId> ids) {
        return ids.stream().map(LotId::value).toArray(String[]::new);
    }
}
