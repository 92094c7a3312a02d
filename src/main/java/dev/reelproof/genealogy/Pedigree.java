package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Queue;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A lot with all that it descends from, or with all that descends from it.
 *
 * @param lots each lot once, nearest first, then by identifier; the lot that was asked for is the first
 * @param links the inputs that join them, in the order of the end nearer to the lot that was asked for, then parent, then child
 */
public record Pedigree(List<Entry> lots, List<Link> links) {

    /** Which way from the lot that was asked for. */
    public enum Direction {
        ANCESTORS,
        DESCENDANTS
    }

    /**
     * A lot without its inputs.
     *
     * @param made when it was made; null for a reel that is registered but whose making was not reported
     * @param step null when not said
     * @param machine null when not said
     * @param run the run that it is an output of; null when not said
     * @param implausible what can hardly be so in it; empty when all fits
     */
    public record Member(
            LotId id,
            String plant,
            LotKind kind,
            Amount quantity,
            @Nullable OffsetDateTime made,
            @Nullable String step,
            @Nullable String machine,
            @Nullable RunId run,
            List<Implausibility> implausible) {

        public Member {
            implausible = List.copyOf(implausible);
        }

        /** A member without a known run, in which all fits. */
        public Member(
                LotId id,
                String plant,
                LotKind kind,
                Amount quantity,
                @Nullable OffsetDateTime made,
                @Nullable String step,
                @Nullable String machine) {
            this(id, plant, kind, quantity, made, step, machine, null, List.of());
        }
    }

    /**
     * A lot at its place.
     *
     * @param depth the least number of links between it and the lot that was asked for, which is at 0
     */
    public record Entry(Member lot, int depth) {}

    /**
     * An input.
     *
     * @param from the parent
     * @param to the child
     * @param quantity how much of the parent went into the child
     * @param placement which stretch of the parent became which stretch of the child; null when it is not known
     */
    public record Link(LotId from, LotId to, Amount quantity, @Nullable Placement placement) {

        /** A link whose place on the parent nobody noted. */
        public Link(LotId from, LotId to, Amount quantity) {
            this(from, to, quantity, null);
        }
    }

    public Pedigree {
        lots = List.copyOf(lots);
        links = List.copyOf(links);
    }

    /**
     * Puts lots and links in order. Each lot is there once, however many ways lead to it, and cycles do no harm.
     *
     * @param start the lot that was asked for, one of the members
     * @throws IllegalArgumentException when a link names no member, a member is given twice, or no links lead to a member
     */
    public static Pedigree of(LotId start, Direction direction, Collection<Member> members, Collection<Link> links) {
        Map<LotId, Member> byId = new TreeMap<>();
        for (Member member : members) {
            if (byId.put(member.id(), member) != null) {
                throw new IllegalArgumentException("lot " + member.id() + " is given twice");
            }
        }
        Map<LotId, List<LotId>> next = new HashMap<>();
        for (Link link : links) {
            if (!byId.containsKey(link.from()) || !byId.containsKey(link.to())) {
                throw new IllegalArgumentException(
                        "the link from " + link.from() + " to " + link.to() + " names a lot that is not given");
            }
            boolean up = direction == Direction.ANCESTORS;
            next.computeIfAbsent(up ? link.to() : link.from(), id -> new ArrayList<>())
                    .add(up ? link.from() : link.to());
        }
        if (!byId.containsKey(start)) {
            throw new IllegalArgumentException("lot " + start + " is not given");
        }
        Map<LotId, Integer> depths = depths(start, next);
        List<Entry> entries = new ArrayList<>();
        for (Member member : byId.values()) {
            Integer depth = depths.get(member.id());
            if (depth == null) {
                throw new IllegalArgumentException("no links lead from lot " + start + " to lot " + member.id());
            }
            entries.add(new Entry(member, depth));
        }
        entries.sort(Comparator.comparingInt(Entry::depth)
                .thenComparing(entry -> entry.lot().id()));
        List<Link> ordered = new ArrayList<>(links);
        ordered.sort(
                Comparator.<Link>comparingInt(link -> Math.min(depth(link.from(), depths), depth(link.to(), depths)))
                        .thenComparing(Link::from)
                        .thenComparing(Link::to));
        return new Pedigree(entries, ordered);
    }

    private static int depth(LotId lot, Map<LotId, Integer> depths) {
        return Objects.requireNonNull(depths.get(lot));
    }

    private static Map<LotId, Integer> depths(LotId start, Map<LotId, List<LotId>> next) {
        // Breadth first: the first way on which a lot is reached is a shortest one.
        Map<LotId, Integer> depths = new HashMap<>(Map.of(start, 0));
        Queue<LotId> waiting = new ArrayDeque<>(List.of(start));
        while (!waiting.isEmpty()) {
            LotId lot = waiting.remove();
            for (LotId neighbour : next.getOrDefault(lot, List.of())) {
                if (depths.putIfAbsent(neighbour, depth(lot, depths) + 1) == null) {
                    waiting.add(neighbour);
                }
            }
        }
        return depths;
    }
}
