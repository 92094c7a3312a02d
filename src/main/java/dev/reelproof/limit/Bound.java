package dev.reelproof.limit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** One side of a limit. */
public sealed interface Bound {

    /** The bound at a frequency in MHz; a constant ignores it. */
    double at(double megahertz);

    /** Decimal places as printed in the requirement, for the rounding method; empty for a curve. */
    OptionalInt decimals();

    /** The formula as a standard would print it. */
    String formula(double megahertz);

    /**
     * A single figure.
     *
     * @param value the figure, in the requirement's unit
     * @param places decimal places with which it is printed
     */
    record Constant(double value, int places) implements Bound {

        /** @throws IllegalArgumentException when the figure is not finite, or has more decimal places than are printed */
        public Constant {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("a limit must be a finite number, not " + value);
            }
            if (!(places >= 0 && BigDecimal.valueOf(value).stripTrailingZeros().scale() <= places)) {
                throw new IllegalArgumentException(
                        "the limit " + value + " cannot be printed with " + places + " decimal places");
            }
        }

        @Override
        public double at(double megahertz) {
            return value;
        }

        @Override
        public OptionalInt decimals() {
            return OptionalInt.of(places);
        }

        @Override
        public String formula(double megahertz) {
            return BigDecimal.valueOf(value)
                    .setScale(places, RoundingMode.UNNECESSARY)
                    .toPlainString();
        }
    }

    /**
     * A curve over frequency, of segments that join.
     *
     * @param segments the segments in order of frequency, each beginning where the one before ends
     */
    record Curve(List<Segment> segments) implements Bound {

        public Curve {
            segments = List.copyOf(segments);
            if (segments.isEmpty()) {
                throw new IllegalArgumentException("a curve needs at least one segment");
            }
            for (int i = 1; i < segments.size(); i++) {
                if (segments.get(i).from() != segments.get(i - 1).to()) {
                    throw new IllegalArgumentException("segment " + (i + 1) + " begins at "
                            + segments.get(i).from() + " MHz but the one before ends at "
                            + segments.get(i - 1).to() + " MHz; segments must join without gap or overlap");
                }
            }
        }

        /** First frequency, MHz. */
        public double from() {
            return segments.get(0).from();
        }

        /** Last frequency, MHz. */
        public double to() {
            return segments.get(segments.size() - 1).to();
        }

        /** The segment that holds a frequency; a frequency where two join belongs to the lower one. */
        private Segment segment(double megahertz) {
            for (Segment segment : segments) {
                if (megahertz <= segment.to()) {
                    return segment;
                }
            }
            return segments.get(segments.size() - 1);
        }

        @Override
        public double at(double megahertz) {
            return segment(megahertz).at(megahertz);
        }

        @Override
        public OptionalInt decimals() {
            return OptionalInt.empty();
        }

        @Override
        public String formula(double megahertz) {
            return segment(megahertz).formula();
        }

        /** All segments with their ranges, for a list of limits. */
        public String describe() {
            return segments.stream()
                    .map(segment -> segment.formula() + " (" + Formulas.number(segment.from()) + " to "
                            + Formulas.number(segment.to()) + " MHz)")
                    .collect(Collectors.joining("; "));
        }
    }
}
