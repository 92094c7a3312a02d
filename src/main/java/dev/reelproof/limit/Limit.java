package dev.reelproof.limit;

import java.util.Optional;

/**
 * A limit: at most, at least, or between two bounds.
 *
 * @param lower what a value must not fall below; empty when there is none
 * @param upper what a value must not exceed; empty when there is none
 */
public record Limit(Optional<Bound> lower, Optional<Bound> upper) {

    public Limit {
        if (lower.isEmpty() && upper.isEmpty()) {
            throw new IllegalArgumentException("a limit needs a lower or an upper bound");
        }
        if (lower.orElse(null) instanceof Bound.Constant low
                && upper.orElse(null) instanceof Bound.Constant high
                && !(low.value() <= high.value())) {
            throw new IllegalArgumentException(
                    "the lower figure " + low.value() + " is above the upper figure " + high.value());
        }
    }

    public static Limit atMost(Bound bound) {
        return new Limit(Optional.empty(), Optional.of(bound));
    }

    public static Limit atLeast(Bound bound) {
        return new Limit(Optional.of(bound), Optional.empty());
    }

    public static Limit between(Bound lower, Bound upper) {
        return new Limit(Optional.of(lower), Optional.of(upper));
    }

    /** The words of the HTTP contract and of limit set files: at-most, at-least, between. */
    public String sense() {
        return lower.isPresent() ? upper.isPresent() ? "between" : "at-least" : "at-most";
    }
}
