package dev.reelproof.analysis;

import java.util.Comparator;

/**
 * One thing that a reel met on its way: {@code machine INS-2}.
 *
 * @param factor what kind of thing
 * @param value its name, not blank
 */
public record Exposure(Factor factor, String value) implements Comparable<Exposure> {
    private static final Comparator<Exposure> ORDER =
            Comparator.comparing(Exposure::factor).thenComparing(Exposure::value);

    public Exposure {
        if (factor == null || value == null || value.isBlank()) {
            throw new IllegalArgumentException("an exposure needs a factor and the name of its value");
        }
    }

    @Override
    public int compareTo(Exposure other) {
        return ORDER.compare(this, other);
    }

    @Override
    public String toString() {
        return factor + " " + value;
    }
}
