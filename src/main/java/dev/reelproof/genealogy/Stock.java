package dev.reelproof.genealogy;

import java.time.OffsetDateTime;

/**
 * What a registered lot had and what its children have taken so far.
 *
 * @param id the lot
 * @param quantity how much there was of it
 * @param taken what its registered children took, in metres or kilograms as {@link Amount#base()}; zero or more
 * @param made when it was made
 */
public record Stock(LotId id, Amount quantity, double taken, OffsetDateTime made) {

    public Stock {
        if (!(taken >= 0 && Double.isFinite(taken))) {
            throw new IllegalArgumentException("what was taken of lot " + id + " must be zero or more, not " + taken);
        }
    }
}
