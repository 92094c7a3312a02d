package dev.reelproof.analysis;

import dev.reelproof.genealogy.LotKind;
import dev.reelproof.quantity.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Follows reels up the links of what they were made from.
 *
 * <p>Equation: the share of reel R that was made from lot L is A(R, L) / Σ A(R, L'), the sum over all lots of L's kind. A(X, L) = a(X,
 * L) + Σ a(X, P)/Q(P) · A(P, L) over the parents P of X of another kind than L. Through a parent of L's own kind, such as a cable cut
 * from a cable, shares multiply.
 *
 * <p>Symbols: a(X, P) what X took of P, Q(P) how much of P there was, both in metres or both in kilograms.
 *
 * <p>Range: shares from 0 to 1. Source: the balance of what goes through each lot; common practice, no source.
 *
 * <p>Edge cases: a kind that is measured by length here and by mass there has no known share in that reel, nor has a kind that comes
 * through a lot of which nothing but its identifier is known.
 *
 * <p>Known error: what a lot took is taken to lie evenly in it. A compound that was changed half-way through a run is half of every reel
 * of that run here, though it is all of some and nothing of others.
 */
final class UpstreamTrace {
    private static final int NO_KIND = -1;

    private final List<String> ids = new ArrayList<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<List<Step>> parents = new ArrayList<>();

    /** The lots from the reels upward: each after all that was made from it. */
    private final int[] upward;

    private final UpstreamLot[] lots;
    private final int[] kinds;
    private final double[] quantities;
    private final int reels;

    /** A link to a parent, by its number. */
    private record Step(int parent, double amount) {}

    /** How much of the nearest lots of each kind is in one, and what share of it comes from each lot above. */
    private record Contents(int[] nearest, double[] amounts, int[] all, double[] shares) {}

    /**
     * Follows reels.
     *
     * @param reels their numbers, each once
     * @throws IllegalArgumentException when a lot was made from itself by way of others
     */
    UpstreamTrace(List<String> reels, Upstream upstream) {
        this.reels = reels.size();
        reels.forEach(this::number);
        for (Upstream.Link link : upstream.links()) {
            parents.get(number(link.child())).add(new Step(number(link.parent()), link.amount()));
        }
        upstream.lots().forEach(lot -> number(lot.id()));
        this.lots = new UpstreamLot[ids.size()];
        this.kinds = new int[ids.size()];
        this.quantities = new double[ids.size()];
        Arrays.fill(kinds, NO_KIND);
        Arrays.fill(quantities, Double.NaN);
        for (UpstreamLot lot : upstream.lots()) {
            int number = number(lot.id());
            lots[number] = lot;
            kinds[number] = lot.kind().ordinal();
            quantities[number] = lot.quantity().base();
        }
        this.upward = upward();
    }

    private int number(String id) {
        return numbers.computeIfAbsent(id, added -> {
            ids.add(added);
            parents.add(new ArrayList<>());
            return ids.size() - 1;
        });
    }

    private int[] upward() {
        int[] waitingFor = new int[ids.size()];
        parents.forEach(steps -> steps.forEach(step -> waitingFor[step.parent]++));
        int[] order = new int[ids.size()];
        int found = 0;
        for (int lot = 0; lot < waitingFor.length; lot++) {
            if (waitingFor[lot] == 0) {
                order[found++] = lot;
            }
        }
        for (int next = 0; next < found; next++) {
            for (Step step : parents.get(order[next])) {
                if (--waitingFor[step.parent] == 0) {
                    order[found++] = step.parent;
                }
            }
        }
        if (found != order.length) {
            throw new IllegalArgumentException("lots above these reels were made from themselves, in a circle");
        }
        return order;
    }

    /** Each lot with the reels that were made from it or are it, by their places in the list of reels. */
    Map<UpstreamLot, BitSet> met() {
        BitSet[] met = new BitSet[ids.size()];
        Arrays.setAll(met, number -> new BitSet());
        for (int reel = 0; reel < reels; reel++) {
            met[reel].set(reel);
        }
        for (int lot : upward) {
            for (Step step : parents.get(lot)) {
                met[step.parent].or(met[lot]);
            }
        }
        Map<UpstreamLot, BitSet> byLot = new LinkedHashMap<>();
        for (int number = 0; number < lots.length; number++) {
            if (lots[number] != null && !met[number].isEmpty()) {
                byLot.put(lots[number], met[number]);
            }
        }
        return byLot;
    }

    /**
     * The shares of the reels that were made from each lot, by the lot's identifier.
     *
     * @param newPlaces the places that the reels have in the population; negative for those left out
     */
    Map<String, Doses> doses(int[] newPlaces) {
        Contents[] contents = contents();
        int[] sizes = new int[ids.size()];
        for (int reel = 0; reel < reels; reel++) {
            if (newPlaces[reel] >= 0) {
                Arrays.stream(contents[reel].all).forEach(lot -> sizes[lot]++);
            }
        }
        int[][] places = new int[ids.size()][];
        double[][] shares = new double[ids.size()][];
        Arrays.setAll(places, lot -> new int[sizes[lot]]);
        Arrays.setAll(shares, lot -> new double[sizes[lot]]);
        int[] next = new int[ids.size()];
        for (int reel = 0; reel < reels; reel++) {
            if (newPlaces[reel] >= 0) {
                Contents made = contents[reel];
                for (int i = 0; i < made.all.length; i++) {
                    int lot = made.all[i];
                    places[lot][next[lot]] = newPlaces[reel];
                    shares[lot][next[lot]++] = made.shares[i];
                }
            }
        }
        Map<String, Doses> doses = new HashMap<>();
        for (int lot = 0; lot < places.length; lot++) {
            if (places[lot].length > 0) {
                doses.put(ids.get(lot), new Doses(places[lot], shares[lot]));
            }
        }
        return doses;
    }

    private Contents[] contents() {
        Contents[] contents = new Contents[ids.size()];
        Gathering gathering = new Gathering(contents);
        for (int i = upward.length - 1; i >= 0; i--) {
            contents[upward[i]] = gathering.of(upward[i]);
        }
        return contents;
    }

    /** Gathers what is in one lot after the other, those above it first; its columns are used again for each. */
    private final class Gathering {
        private final Contents[] above;
        private final double[] amounts = new double[ids.size()];
        private final double[] shares = new double[ids.size()];
        private final int[] found = new int[ids.size()];
        private final boolean[] isFound = new boolean[ids.size()];
        private int count;

        Gathering(Contents[] above) {
            this.above = above;
        }

        private void find(int lot) {
            if (!isFound[lot]) {
                isFound[lot] = true;
                found[count++] = lot;
            }
        }

        Contents of(int child) {
            for (Step step : parents.get(child)) {
                find(step.parent);
                amounts[step.parent] += step.amount;
                double taken = step.amount / quantities[step.parent];
                Contents through = above[step.parent];
                for (int i = 0; i < through.nearest.length; i++) {
                    int lot = through.nearest[i];
                    if (kinds[lot] != kinds[step.parent]) {
                        find(lot);
                        amounts[lot] += taken * through.amounts[i];
                    }
                }
            }
            int[] nearest = Arrays.copyOf(found, count);
            double[] nearestAmounts =
                    Arrays.stream(nearest).mapToDouble(lot -> amounts[lot]).toArray();
            share(nearest);
            int[] all = Arrays.copyOf(found, count);
            double[] allShares =
                    Arrays.stream(all).mapToDouble(lot -> shares[lot]).toArray();
            for (int lot : all) {
                amounts[lot] = 0;
                shares[lot] = 0;
                isFound[lot] = false;
            }
            count = 0;
            return new Contents(nearest, nearestAmounts, all, allShares);
        }

        private void share(int[] nearest) {
            double[] totals = new double[LotKind.values().length];
            Kind[] measured = new Kind[totals.length];
            for (int lot : nearest) {
                int kind = kinds[lot];
                if (kind != NO_KIND) {
                    Kind own = lots[lot].quantity().kind();
                    totals[kind] += measured[kind] == null || measured[kind] == own ? amounts[lot] : Double.NaN;
                    measured[kind] = own;
                }
            }
            double[] direct = Arrays.stream(nearest)
                    .mapToDouble(lot -> kinds[lot] == NO_KIND ? Double.NaN : amounts[lot] / totals[kinds[lot]])
                    .toArray();
            for (int i = 0; i < nearest.length; i++) {
                shares[nearest[i]] += direct[i];
            }
            for (int i = 0; i < nearest.length; i++) {
                Contents through = above[nearest[i]];
                for (int j = 0; j < through.all.length; j++) {
                    int lot = through.all[j];
                    if (kinds[lot] == kinds[nearest[i]]) {
                        find(lot);
                        shares[lot] += direct[i] * through.shares[j];
                    }
                }
            }
        }
    }
}
