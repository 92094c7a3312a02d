package dev.reelproof.genealogy;

/**
 * What can hardly be so in a lot that was taken all the same.
 *
 * @param parent the parent whose link it is; null when it is about all of them together
 * @param message what does not fit, with both figures and the tolerance
 */
public record Implausible(LotId parent, String message) {}
