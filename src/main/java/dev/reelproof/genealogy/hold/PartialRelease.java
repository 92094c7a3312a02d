package dev.reelproof.genealogy.hold;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.Stretch;
import dev.reelproof.genealogy.admission.LotChecks;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.TreeSet;

/**
 * Common practice, no source: what becomes free when a stretch of a held lot is released. What cannot be placed stays held.
 *
 * <ul>
 *   <li>Equation: a lot is free when H = ∅ and F ≠ ∅; on the held lot F is what was released and H the rest; on a child
 *       H = ∪ p(H_parent) and F = ∪ p(F_parent) over its inputs, with p as {@link Placement} maps parent to child; H is the whole child
 *       for an input that is not placed
 *   <li>Symbols: H, F stretches of a lot that come from what is held and from what was released, in m or kg
 *   <li>Range: an input is placed when its position is known and tells at least the quantity that went in, less 2 %
 *   <li>Source: the counters' tolerance of 2 % is that of {@link LotChecks}; common practice, no source
 *   <li>Edge cases: a lot of which a part alone lies within what was released stays held, whole; so does one that the positions place
 *       beside the held lot's stretches altogether, since they then say nothing of how it descends. A stretch that only touches counts
 *       for nothing
 *   <li>Known error: that of the positions; whoever releases leaves a margin for length counters that slip
 * </ul>
 */
public final class PartialRelease {

    /** What of a lot comes from what is held and from what was released. */
    private record Parts(List<Stretch> held, List<Stretch> free) {
        Parts() {
            this(new ArrayList<>(), new ArrayList<>());
        }
    }

    private PartialRelease() {}

    /**
     * The lots that are free of a hold; all others that descend from the held lot stay held, and so does the held lot itself when it is
     * not among them.
     *
     * @param pedigree lots and the links between them, the held lot among them; links that lead there from elsewhere do not count
     * @param held the held lot
     * @param released the stretches of it that were released, in metres or kilograms
     */
    public static Set<LotId> freed(Pedigree pedigree, LotId held, List<Stretch> released) {
        Map<LotId, Stretch> wholes = new HashMap<>();
        pedigree.lots()
                .forEach(entry -> wholes.put(
                        entry.lot().id(), new Stretch(0, entry.lot().quantity().base())));
        Map<LotId, List<Pedigree.Link>> children = new HashMap<>();
        pedigree.links().forEach(link -> children.computeIfAbsent(link.from(), id -> new ArrayList<>())
                .add(link));
        Map<LotId, Integer> open = openInputs(held, children);
        Map<LotId, Parts> parts = new HashMap<>();
        Parts own = new Parts();
        own.held().addAll(wholes.get(held).without(released));
        released.forEach(
                stretch -> add(own.free(), wholes.get(held).common(stretch).orElse(null)));
        parts.put(held, own);
        Set<LotId> freed = new TreeSet<>();
        Queue<LotId> ready = new ArrayDeque<>(List.of(held));
        while (!ready.isEmpty()) {
            LotId lot = ready.remove();
            List<Stretch> heldHere = Stretch.union(parts.get(lot).held());
            List<Stretch> freeHere = Stretch.union(parts.get(lot).free());
            if (heldHere.isEmpty() && !freeHere.isEmpty()) {
                freed.add(lot);
            }
            for (Pedigree.Link link : children.getOrDefault(lot, List.of())) {
                Parts child = parts.computeIfAbsent(link.to(), id -> new Parts());
                if (isPlaced(link)) {
                    Placement placement = link.placement();
                    heldHere.forEach(stretch ->
                            add(child.held(), placement.onLot(stretch).orElse(null)));
                    freeHere.forEach(stretch ->
                            add(child.free(), placement.onLot(stretch).orElse(null)));
                } else {
                    child.held().add(wholes.get(link.to()));
                }
                if (open.merge(link.to(), -1, Integer::sum) == 0) {
                    ready.add(link.to());
                }
            }
        }
        return freed;
    }

    private static void add(List<Stretch> stretches, Stretch stretch) {
        if (stretch != null && stretch.hasLength()) {
            stretches.add(stretch);
        }
    }

    private static boolean isPlaced(Pedigree.Link link) {
        return link.placement() != null
                && link.quantity().base() <= link.placement().stretchOfParent().length() * (1 + LotChecks.OF_COUNTERS);
    }

    /** For each lot that descends from the held one, how many of its inputs do too. Lots in a circle never become ready. */
    private static Map<LotId, Integer> openInputs(LotId held, Map<LotId, List<Pedigree.Link>> children) {
        Map<LotId, Integer> open = new HashMap<>();
        Set<LotId> seen = new HashSet<>(Set.of(held));
        Queue<LotId> waiting = new ArrayDeque<>(seen);
        while (!waiting.isEmpty()) {
            for (Pedigree.Link link : children.getOrDefault(waiting.remove(), List.of())) {
                open.merge(link.to(), 1, Integer::sum);
                if (seen.add(link.to())) {
                    waiting.add(link.to());
                }
            }
        }
        return open;
    }
}
