package dev.reelproof.limit;

/** Where along frequency a requirement is judged. */
public sealed interface Domain {
    /** Frequencies that differ by less than this share of themselves are the same: they pass through unit conversions. */
    double FREQUENCY_TOLERANCE = 1e-9;

    /** Whether a requirement is judged at a frequency in MHz. */
    boolean holds(double megahertz);

    /** Not limited along frequency: it holds at every frequency that there is. */
    record NoFrequency() implements Domain {
        @Override
        public boolean holds(double megahertz) {
            return true;
        }
    }

    /**
     * At one frequency.
     *
     * @param megahertz the frequency, MHz
     */
    record Spot(double megahertz) implements Domain {

        public Spot {
            if (!(megahertz > 0 && Double.isFinite(megahertz))) {
                throw new IllegalArgumentException(
                        "a frequency must be positive and finite, not " + megahertz + " MHz");
            }
        }

        @Override
        public boolean holds(double other) {
            return Math.abs(other - megahertz) <= megahertz * FREQUENCY_TOLERANCE;
        }
    }

    /**
     * Over a range, both ends included.
     *
     * @param from first frequency, MHz
     * @param to last frequency, MHz
     */
    record Range(double from, double to) implements Domain {

        public Range {
            if (!(from > 0 && to > from && Double.isFinite(to))) {
                throw new IllegalArgumentException("a range runs from a positive frequency to a higher one, not from "
                        + from + " to " + to + " MHz");
            }
        }

        @Override
        public boolean holds(double megahertz) {
            return megahertz >= from * (1 - FREQUENCY_TOLERANCE) && megahertz <= to * (1 + FREQUENCY_TOLERANCE);
        }
    }
}
