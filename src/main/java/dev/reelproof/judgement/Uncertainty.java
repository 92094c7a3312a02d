package dev.reelproof.judgement;

/**
 * How sure a figure is, and how sure the decision on it.
 *
 * @param expanded U = k u of the corrected value, in the figure's unit
 * @param coverageFactor k
 * @param probabilityOfConformity that the true value meets the limit, from 0 to 1
 */
public record Uncertainty(double expanded, double coverageFactor, double probabilityOfConformity) {

    /** @throws IllegalArgumentException when a figure is not possible */
    public Uncertainty {
        if (!(expanded >= 0 && Double.isFinite(expanded) && coverageFactor > 0 && Double.isFinite(coverageFactor))) {
            throw new IllegalArgumentException(
                    "an expanded uncertainty is 0 or more and its k above 0, both finite, not " + expanded
                            + " with k = " + coverageFactor);
        }
        if (!(probabilityOfConformity >= 0 && probabilityOfConformity <= 1)) {
            throw new IllegalArgumentException(
                    "a probability lies between 0 and 1; this one is " + probabilityOfConformity);
        }
    }
}
