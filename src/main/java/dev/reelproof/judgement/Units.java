package dev.reelproof.judgement;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;

/**
 * The unit of the core that a statistic was taken of, or the two units that it was taken between.
 *
 * @param unit number of the unit, of two the lower
 * @param other number of the other unit; absent for a statistic within one
 */
public record Units(int unit, @Nullable Integer other) implements Comparable<Units> {
    private static final Comparator<Units> ORDER =
            Comparator.comparingInt(Units::unit).thenComparingInt(units -> units.other == null ? 0 : units.other);

    /** @throws IllegalArgumentException when a number is not 1 or more, or the two are not in order */
    public Units {
        if (!(unit >= 1 && (other == null || other > unit))) {
            throw new IllegalArgumentException(
                    "units have numbers from 1, the lower first, not " + unit + " and " + other);
        }
    }

    static Units between(int one, int other) {
        return one == other ? new Units(one, null) : new Units(Math.min(one, other), Math.max(one, other));
    }

    /** In words: "unit 3", "units 3 and 4". */
    public String words() {
        return other == null ? "unit " + unit : "units " + unit + " and " + other;
    }

    @Override
    public int compareTo(Units another) {
        return ORDER.compare(this, another);
    }
}
