package dev.reelproof.measurement;

import dev.reelproof.quantity.Length;
import java.util.Objects;
import java.util.Set;

/**
 * The first and the last of the sequential length marks that the jacket of a reel's cable carries. They tell a reel from its neighbours in
 * the same run.
 *
 * @param first the mark at one end, in {@code unit}; 0 or more
 * @param last the mark at the other end, in {@code unit}; 0 or more, below or above the first
 * @param unit the unit of length that the jacket is marked in
 */
public record LengthMarks(double first, double last, String unit) {
    /** Share of the registered length. Common practice, no source. */
    private static final double MOST_SHARE = 0.01;

    /** Where the jacket counts metres, and where it counts feet: three of them. Common practice, no source. */
    private static final Length MOST_METRES = Length.ofMetres(1);

    private static final Length MOST_FEET = Length.of(3, "ft");

    private static final Set<String> METRIC_UNITS = Set.of("m", "km", "mm");

    /** What the conversion of units may do to a difference that is just at the edge, in m. */
    private static final double ROUNDING_METRES = 1e-6;

    public LengthMarks {
        requireMark("first", first);
        requireMark("last", last);
        Objects.requireNonNull(unit, "length marks need a unit of length");
        Length.of(1, unit);
        if (first == last) {
            throw new IllegalArgumentException("the first and the last length mark are both " + first + " " + unit
                    + "; a reel lies between two marks");
        }
    }

    private static void requireMark(String which, double mark) {
        if (!(mark >= 0 && Double.isFinite(mark))) {
            throw new IllegalArgumentException(
                    "the " + which + " length mark must be a finite number of 0 or more, not " + mark);
        }
    }

    /** The first mark in m. */
    public double firstMetres() {
        return first * metresPerUnit();
    }

    /** The last mark in m. */
    public double lastMetres() {
        return last * metresPerUnit();
    }

    private double metresPerUnit() {
        return Length.of(1, unit).metres();
    }

    /** How much cable lies between the marks. */
    public Length span() {
        return Length.of(Math.abs(last - first), unit);
    }

    /**
     * Whether the marks can be those of a reel of that length.
     *
     * <p>Equation: |s − L| ≤ max(0.01 · L, t). Symbols: s what lies between the marks, in m; L the length, in m; t 1 m, or 3 ft where the
     * jacket is marked in a unit of feet. Range: any length. Source: common practice, no source. Edge cases: a difference just at the
     * edge agrees. Known error: a jacket whose count began again at zero within the reel does not agree.
     *
     * @param length the length that the reel is registered with
     */
    public boolean agreeWith(Length length) {
        Length least = METRIC_UNITS.contains(unit.strip()) ? MOST_METRES : MOST_FEET;
        double most = Math.max(MOST_SHARE * length.metres(), least.metres());
        return Math.abs(span().metres() - length.metres()) <= most + ROUNDING_METRES;
    }
}
