package dev.reelproof.certificate;

import java.time.LocalDate;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What must be said of a reel and of this issue beside the result of its newest test, in the language of the certificate.
 *
 * @param tests what its tests came to one after another, in few words; null when this was its first test, or the plant does not say it
 * @param concession on what concession it is delivered, a sentence; null for none
 * @param replaced the issue that this one takes the place of; null for the first issue
 */
public record Circumstances(@Nullable String tests, @Nullable String concession, @Nullable Replaced replaced) {
    /** Nothing. */
    public static final Circumstances NONE = new Circumstances(null, null, null);

    public Circumstances {
        if (Stream.of(tests, concession).filter(Objects::nonNull).anyMatch(String::isBlank)) {
            throw new IllegalArgumentException("retests and concessions are said in words");
        }
    }

    /** The same, where this issue takes the place of another. */
    public Circumstances replacing(Replaced earlier) {
        return new Circumstances(tests, concession, earlier);
    }

    /**
     * An issue that another takes the place of (ISO/IEC 17025:2017, 7.8.8, from memory: a new report says which one it replaces, and
     * where it is appropriate why).
     *
     * @param issue which
     * @param issued the day on which it was issued, in UTC
     * @param reason why it is replaced
     */
    public record Replaced(int issue, LocalDate issued, String reason) {

        public Replaced {
            if (!(issue >= 1) || reason.isBlank()) {
                throw new IllegalArgumentException("issue " + issue + " is replaced for a reason");
            }
        }
    }
}
