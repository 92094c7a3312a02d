package dev.reelproof.genealogy;

import org.jspecify.annotations.Nullable;

/**
 * Something in a registered lot that can hardly be so. It refuses nothing: counters, scales and clerks err, and the lot exists.
 *
 * @param parent the parent whose link it is about; null when it is about all inputs together
 * @param message what does not fit, with both figures and the tolerance
 */
public record Implausibility(@Nullable LotId parent, String message) {}
