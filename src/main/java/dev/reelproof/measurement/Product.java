package dev.reelproof.measurement;

import dev.reelproof.quantity.Length;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A cable product, as far as its judgement needs it.
 *
 * @param id the product's code, unique within a plant
 * @param description in words
 * @param limitSet the limit set that its reels are judged by
 * @param pairs how many pairs the core has
 * @param gauge the conductor gauge in words, such as {@code 23 AWG}
 * @param nominalVelocity velocity of propagation over that of light, between 0 and 1; null when not stated
 * @param lays the lay of each pair that is stated, by pair number
 * @param units the units of the core; a core that states none is one unit
 */
public record Product(
        String id,
        String description,
        String limitSet,
        int pairs,
        String gauge,
        @Nullable Double nominalVelocity,
        Map<Integer, Length> lays,
        List<CoreUnit> units) {

    /** The most pairs that one core of the plant can have. */
    public static final int MOST_PAIRS = 4200;

    public Product {
        if (id == null || id.isBlank()) {
            throw new IllegalArgumentException("a product needs a code");
        }
        if (limitSet == null || limitSet.isBlank()) {
            throw new IllegalArgumentException("product " + id + " needs a limitSet");
        }
        if (!(pairs >= 1 && pairs <= MOST_PAIRS)) {
            throw new IllegalArgumentException("pairs must be between 1 and " + MOST_PAIRS + ", not " + pairs);
        }
        if (nominalVelocity != null && !(nominalVelocity > 0 && nominalVelocity < 1)) {
            throw new IllegalArgumentException("nominalVelocity must lie between 0 and 1, not " + nominalVelocity);
        }
        for (int pair : lays.keySet()) {
            if (!(pair >= 1 && pair <= pairs)) {
                throw new IllegalArgumentException("lay of pair " + pair + ": the product has pairs 1 to " + pairs);
            }
        }
        lays = Map.copyOf(lays);
        units = List.copyOf(units);
        Set<Integer> placed = new HashSet<>();
        for (CoreUnit unit : units) {
            for (int pair = unit.firstPair(); pair <= unit.lastPair(); pair++) {
                if (pair > pairs || !placed.add(pair)) {
                    throw new IllegalArgumentException("unit " + unit.unit() + " holds pair " + pair
                            + ", which is in another unit or beyond the product's " + pairs + " pairs");
                }
            }
        }
        if (!units.isEmpty() && placed.size() != pairs) {
            throw new IllegalArgumentException("the units hold " + placed.size() + " of the product's " + pairs
                    + " pairs; each pair needs a unit");
        }
    }
}
