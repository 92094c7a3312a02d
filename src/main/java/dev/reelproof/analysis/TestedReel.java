package dev.reelproof.analysis;

import org.jspecify.annotations.Nullable;

/**
 * One reel of a population with what was found of the property asked about.
 *
 * @param reel its number
 * @param failing whether the property failed
 * @param margin the least margin of the property, in the unit of the population, positive on the good side; null where none is known
 */
public record TestedReel(String reel, boolean failing, @Nullable Double margin) {
    public TestedReel {
        if (reel == null || reel.isBlank()) {
            throw new IllegalArgumentException("a reel needs its number");
        }
        if (margin != null && !Double.isFinite(margin)) {
            throw new IllegalArgumentException(
                    "the margin of reel " + reel + " must be a finite number, not " + margin);
        }
    }
}
