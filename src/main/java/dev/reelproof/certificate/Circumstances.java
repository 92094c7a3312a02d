package dev.reelproof.certificate;

import dev.reelproof.record.concession.ConcessionStanding;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What must be said of a reel and of this issue beside the result of its newest test, in the language of the certificate.
 *
 * @param tests what its tests came to one after another, in few words; null when this was its first test, or the plant does not say it
 * @param concessions what the concessions of the reel mean for that result
 * @param replaced the issue that this one takes the place of; null for the first issue
 */
public record Circumstances(@Nullable String tests, ConcessionStanding concessions, @Nullable Replaced replaced) {
    /** Nothing. */
    public static final Circumstances NONE = new Circumstances(null, ConcessionStanding.NONE, null);

    public Circumstances {
        if (tests != null && tests.isBlank()) {
            throw new IllegalArgumentException("retests are said in words");
        }
    }

    /** The same, where this issue takes the place of another. */
    public Circumstances replacing(Replaced earlier) {
        return new Circumstances(tests, concessions, earlier);
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
