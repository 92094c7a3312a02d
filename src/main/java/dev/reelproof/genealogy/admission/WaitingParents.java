package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.LotId;
import java.util.Map;
import java.util.Set;

/** Tells what reports that wait are made from. */
@FunctionalInterface
public interface WaitingParents {
    /** The parents that are missed by each of these lots that waits, and by each above them that waits too. */
    Map<LotId, Set<LotId>> above(Set<LotId> lots);
}
