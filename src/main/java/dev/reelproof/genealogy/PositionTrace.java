package dev.reelproof.genealogy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Traces a place on a lot back to the stretches of all that the lot was made from, link by link as {@link Placement} says.
 *
 * @param found each lot of which the stretch is known, in the order of the pedigree, the lot that was asked for first
 * @param ends where knowledge ends, in the order of the pedigree
 */
public record PositionTrace(List<Found> found, List<End> ends) {

    /**
     * Where on a lot.
     *
     * @param lot the lot
     * @param depth the least number of links from the lot that was asked for
     * @param through the lots through which it was reached; empty for the lot that was asked for
     * @param stretches in as few as can be, lowest first; at least one
     */
    public record Found(Pedigree.Member lot, int depth, Set<LotId> through, List<Stretch> stretches) {}

    /**
     * A lot that went in, at a place that is not known.
     *
     * @param lot the lot
     * @param reason why it is not known
     */
    public record End(LotId lot, String reason) {}

    public PositionTrace {
        found = List.copyOf(found);
        ends = List.copyOf(ends);
    }

    /**
     * Traces a place on the pedigree's first lot, with a tolerance to either side. What of the tolerance lies beyond an end of the lot
     * is left off.
     *
     * @param pedigree the lot with its ancestors
     * @param at the place from the lot's beginning, in {@code unit}; zero or more
     * @param within the tolerance to either side, in {@code unit}; zero or more
     * @param unit a unit of length, or of mass for a lot that is measured by mass
     * @throws IllegalArgumentException when there is no such place on the lot
     */
    public static PositionTrace around(Pedigree pedigree, double at, double within, String unit) {
        if (!(at >= 0 && within >= 0 && Double.isFinite(at) && Double.isFinite(within))) {
            throw new IllegalArgumentException(
                    "a place on a reel is zero or more, not " + at + " within " + within + " " + unit);
        }
        Amount length = pedigree.lots().get(0).lot().quantity();
        if (Amount.kindOf(unit) != length.kind()) {
            throw new IllegalArgumentException(
                    "the reel is measured as " + length.kind().words() + "; give the place in that, not in " + unit);
        }
        double place = Amount.baseOf(at, unit);
        double beside = Amount.baseOf(within, unit);
        return of(
                pedigree,
                place > length.base()
                        ? new Stretch(place, place)
                        : new Stretch(Math.max(0, place - beside), Math.min(length.base(), place + beside)));
    }

    /**
     * Traces a stretch.
     *
     * @param pedigree the lot with its ancestors; its first lot is the one that {@code asked} lies on
     * @param asked the stretch, in metres or kilograms from the lot's beginning
     * @throws IllegalArgumentException when it does not lie on the lot
     */
    public static PositionTrace of(Pedigree pedigree, Stretch asked) {
        Pedigree.Member start = pedigree.lots().get(0).lot();
        if (!(asked.to() <= start.quantity().base())) {
            throw new IllegalArgumentException("lot " + start.id() + " ends at " + start.quantity()
                    + "; there is no place at " + start.quantity().inMyUnit(asked.to()) + " on it");
        }
        Map<LotId, List<Pedigree.Link>> inputs = new HashMap<>();
        for (Pedigree.Link link : pedigree.links()) {
            inputs.computeIfAbsent(link.to(), id -> new ArrayList<>()).add(link);
        }
        Map<LotId, List<Stretch>> stretches = new HashMap<>(Map.of(start.id(), List.of(asked)));
        Map<LotId, Set<LotId>> through = new HashMap<>();
        Map<LotId, Set<String>> reasons = new HashMap<>();
        for (LotId lot : childrenFirst(pedigree, inputs)) {
            List<Stretch> here = Stretch.union(stretches.getOrDefault(lot, List.of()));
            stretches.put(lot, here);
            List<Stretch> covered = new ArrayList<>();
            for (Pedigree.Link link : inputs.getOrDefault(lot, List.of())) {
                Placement placement = link.placement();
                if (placement == null) {
                    if (!here.isEmpty()) {
                        note(reasons, link.from(), "lot " + lot + " does not say which stretch of it went in");
                    }
                } else {
                    covered.add(placement.stretch());
                    for (Stretch stretch : here) {
                        Optional<Stretch> onParent = placement.onParent(stretch);
                        if (onParent.isPresent()) {
                            stretches
                                    .computeIfAbsent(link.from(), id -> new ArrayList<>())
                                    .add(onParent.get());
                            through.computeIfAbsent(link.from(), id -> new TreeSet<>())
                                    .add(lot);
                        }
                    }
                }
                if (reasons.containsKey(lot)) {
                    note(reasons, link.from(), "it went into lot " + lot + ", of which the stretch is not known");
                }
            }
            if (!covered.isEmpty() && !here.stream().allMatch(stretch -> isCovered(stretch, covered))) {
                note(reasons, lot, "not all of this stretch of it is told by the positions of what went in");
            }
        }
        List<Found> found = new ArrayList<>();
        List<End> ends = new ArrayList<>();
        for (Pedigree.Entry entry : pedigree.lots()) {
            LotId id = entry.lot().id();
            List<Stretch> here = stretches.getOrDefault(id, List.of());
            if (!here.isEmpty()) {
                found.add(new Found(entry.lot(), entry.depth(), through.getOrDefault(id, Set.of()), here));
            }
            if (reasons.containsKey(id)) {
                ends.add(new End(id, String.join("; ", reasons.get(id))));
            }
        }
        return new PositionTrace(found, ends);
    }

    private static void note(Map<LotId, Set<String>> reasons, LotId lot, String reason) {
        reasons.computeIfAbsent(lot, id -> new LinkedHashSet<>()).add(reason);
    }

    private static boolean isCovered(Stretch stretch, List<Stretch> covered) {
        return Stretch.union(covered).stream().anyMatch(whole -> whole.covers(stretch));
    }

    /** All lots, each after everything that was made from it. Lots in a circle, which are never registered, are left out. */
    private static List<LotId> childrenFirst(Pedigree pedigree, Map<LotId, List<Pedigree.Link>> inputs) {
        Map<LotId, Integer> children = new LinkedHashMap<>();
        pedigree.lots().forEach(entry -> children.put(entry.lot().id(), 0));
        pedigree.links().forEach(link -> children.merge(link.from(), 1, Integer::sum));
        List<LotId> order = new ArrayList<>();
        children.forEach((lot, count) -> {
            if (count == 0) {
                order.add(lot);
            }
        });
        for (int next = 0; next < order.size(); next++) {
            for (Pedigree.Link link : inputs.getOrDefault(order.get(next), List.of())) {
                if (children.merge(link.from(), -1, Integer::sum) == 0) {
                    order.add(link.from());
                }
            }
        }
        return order;
    }
}
