package dev.reelproof.genealogy;

/**
 * What went into a lot.
 *
 * @param lot the parent lot
 * @param quantity how much of the parent, in the parent's dimension: a length of a lot measured by length, a mass of one by mass
 */
public record LotInput(LotId lot, Amount quantity) {}
