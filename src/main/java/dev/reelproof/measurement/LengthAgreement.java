package dev.reelproof.measurement;

import dev.reelproof.quantity.Length;
import java.util.Optional;

/** Whether the length that a bay measured can be that of the reel that was registered. */
public final class LengthAgreement {
    /** The registered length is a nominal one; beyond this share it is rather another reel, or a slip. A rule of this program. */
    private static final double MOST_DIFFERENCE = 0.02;

    private static final double PERCENT = 100;

    private LengthAgreement() {}

    /**
     * The sentence that warns when the lengths differ by more than 2 % of the registered one; empty when they agree.
     *
     * @param registered the length as registered
     * @param measured the length as measured
     */
    public static Optional<String> warning(Length registered, Length measured) {
        double difference = (measured.metres() - registered.metres()) / registered.metres();
        if (Math.abs(difference) <= MOST_DIFFERENCE) {
            return Optional.empty();
        }
        return Optional.of("The measured length, " + measured.metres() + " m, differs from the registered one, "
                + registered.metres() + " m, by more than " + Math.round(MOST_DIFFERENCE * PERCENT) + " %.");
    }
}
