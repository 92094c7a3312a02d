package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.LotId;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds out whether a lot would descend from itself. */
public final class PedigreeCycle {
    private PedigreeCycle() {}

    /**
     * Whether some way up from a lot leads back to it. No registered lot has such a way, since each was registered after its parents;
     * it takes reports that wait for each other.
     *
     * @param lot the lot
     * @param parents the parents of each lot that is known to have any, those of the lot itself included
     */
    public static boolean isThrough(LotId lot, Map<LotId, ? extends Collection<LotId>> parents) {
        Set<LotId> seen = new HashSet<>();
        Deque<LotId> ways = new ArrayDeque<>(parentsOf(lot, parents));
        while (!ways.isEmpty()) {
            LotId ancestor = ways.pop();
            if (ancestor.equals(lot)) {
                return true;
            }
            if (seen.add(ancestor)) {
                ways.addAll(parentsOf(ancestor, parents));
            }
        }
        return false;
    }

    private static Collection<LotId> parentsOf(LotId lot, Map<LotId, ? extends Collection<LotId>> parents) {
        Collection<LotId> found = parents.get(lot);
        return found == null ? List.of() : found;
    }
}
