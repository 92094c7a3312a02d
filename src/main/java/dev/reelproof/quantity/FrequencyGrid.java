package dev.reelproof.quantity;

import java.util.Arrays;

/** Frequencies of a sweep in MHz: positive, finite, strictly ascending, at least one. Immutable; equal by content. */
public final class FrequencyGrid {
    private final double[] megahertz;

    /** Worked out once: a grid is the key to what is prepared for it, and asked for with every sweep. */
    private final int hash;

    private FrequencyGrid(double[] megahertz) {
        this.megahertz = megahertz;
        this.hash = Arrays.hashCode(megahertz);
    }

    /**
     * A grid of the given frequencies.
     *
     * @param megahertz frequencies in MHz
     * @throws IllegalArgumentException naming the first index that is not positive, not finite, or not above its predecessor
     */
    public static FrequencyGrid ofMegahertz(double... megahertz) {
        if (megahertz.length == 0) {
            throw new IllegalArgumentException("a frequency grid needs at least one frequency");
        }
        double[] copy = megahertz.clone();
        for (int i = 0; i < copy.length; i++) {
            if (!(copy[i] > 0 && Double.isFinite(copy[i]))) {
                throw new IllegalArgumentException(
                        "frequency " + (i + 1) + " is " + copy[i] + " MHz; it must be positive and finite");
            }
            if (i > 0 && !(copy[i] > copy[i - 1])) {
                throw new IllegalArgumentException(
                        "frequency " + (i + 1) + " (" + copy[i] + " MHz) is not above the one before (" + copy[i - 1]
                                + " MHz); frequencies must ascend without repeats");
            }
        }
        return new FrequencyGrid(copy);
    }

    /** Frequency in MHz as written with a unit of frequency. */
    public static double megahertz(double value, String unit) {
        return Units.toBase(value, unit, Kind.FREQUENCY);
    }

    public int size() {
        return megahertz.length;
    }

    /** The frequency at an index, in MHz. */
    public double megahertz(int index) {
        return megahertz[index];
    }

    public double first() {
        return megahertz[0];
    }

    public double last() {
        return megahertz[megahertz.length - 1];
    }

    /** A copy of the frequencies, in MHz. */
    public double[] toArray() {
        return megahertz.clone();
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof FrequencyGrid grid
                        && hash == grid.hash
                        && Arrays.equals(megahertz, grid.megahertz));
    }

    @Override
    public int hashCode() {
        return hash;
    }

    @Override
    public String toString() {
        return size() + " frequencies, " + first() + " to " + last() + " MHz";
    }
}
