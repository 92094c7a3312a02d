package dev.reelproof.certificate;

import org.jspecify.annotations.Nullable;

/**
 * What must be said of a reel beside the result of its newest test.
 *
 * @param attempts how often it was tested before; null when this was its first test, or the plant does not say it
 * @param concession on what concession it is delivered, a sentence; null for none
 */
public record Circumstances(@Nullable Attempts attempts, @Nullable String concession) {
    /** Nothing. */
    public static final Circumstances NONE = new Circumstances(null, null);

    public Circumstances {
        if (concession != null && concession.isBlank()) {
            throw new IllegalArgumentException("a concession is said in words");
        }
    }

    /**
     * Which of a reel's tests the certificate speaks of.
     *
     * @param attempt its number, from 2
     * @param rejected how many before it rejected the reel
     */
    public record Attempts(int attempt, int rejected) {

        public Attempts {
            if (!(attempt >= 2 && rejected >= 0 && rejected < attempt)) {
                throw new IllegalArgumentException(
                        "attempt " + attempt + " cannot follow " + rejected + " that rejected the reel");
            }
        }
    }
}
