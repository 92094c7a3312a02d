package dev.reelproof.network;

import org.jspecify.annotations.Nullable;

/**
 * What is known of a cable before its phase is unwrapped.
 *
 * @param metres its length in m; positive and finite
 * @param nominalVelocity velocity of propagation over that of light, between 0 and 1, where stated
 */
public record CableSpan(double metres, @Nullable Double nominalVelocity) {

    public CableSpan {
        if (!(metres > 0 && Double.isFinite(metres))) {
            throw new IllegalArgumentException("a length must be positive and finite, not " + metres + " m");
        }
        if (nominalVelocity != null && !(nominalVelocity > 0 && nominalVelocity < 1)) {
            throw new IllegalArgumentException("a nominal velocity must lie between 0 and 1, not " + nominalVelocity);
        }
    }
}
