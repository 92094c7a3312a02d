package dev.reelproof.correction;

/**
 * A correction law under known conditions: a straight line in the value.
 *
 * <p>c = factor · x + shift, with the measured value x and the corrected value c in one unit.
 *
 * @param factor slope, above 0
 * @param shift what is added, in the unit of the value
 */
public record Line(double factor, double shift) {
    /** No correction: the value comes back as it was. */
    public static final Line UNCHANGED = new Line(1, 0);

    /** @throws IllegalArgumentException when the slope is not above 0, or a figure is not finite */
    public Line {
        if (!(factor > 0 && Double.isFinite(factor) && Double.isFinite(shift))) {
            throw new IllegalArgumentException(
                    "a correction has a finite slope above 0 and a finite shift, not " + factor + " and " + shift);
        }
    }

    /** A line through zero. */
    static Line scaling(double factor) {
        return new Line(factor, 0);
    }

    /** A line that only shifts, such as one in dB. */
    static Line shifting(double shift) {
        return new Line(1, shift);
    }

    /** This line followed by the next. */
    public Line then(Line next) {
        return new Line(next.factor * factor, next.of(shift));
    }

    /** The corrected value. */
    public double of(double value) {
        return factor * value + shift;
    }
}
