package dev.reelproof.limit;

/**
 * How wide a step of a sweep may be within the range judged: the wider of the two.
 *
 * @param decades widest step in decades of frequency
 * @param megahertz widest step in MHz
 */
public record GridRule(double decades, double megahertz) {

    public GridRule {
        if (!(decades > 0 && megahertz > 0)) {
            throw new IllegalArgumentException(
                    "the widest step must be positive, not " + decades + " decades and " + megahertz + " MHz");
        }
        if (!(Double.isFinite(decades) && Double.isFinite(megahertz))) {
            throw new IllegalArgumentException(
                    "the widest step must be finite, not " + decades + " decades and " + megahertz + " MHz");
        }
    }
}
