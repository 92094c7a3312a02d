package dev.reelproof.genealogy;

import org.jspecify.annotations.Nullable;

/**
 * What went into a lot.
 *
 * @param lot the parent lot
 * @param quantity how much of the parent, in the parent's dimension: a length of a lot measured by length, a mass of one by mass
 * @param placement which stretch of the parent became which stretch of the lot; null when it is not known
 */
public record LotInput(LotId lot, Amount quantity, @Nullable Placement placement) {

    /** An input whose place nobody noted. */
    public LotInput(LotId lot, Amount quantity) {
        this(lot, quantity, null);
    }
}
