package dev.reelproof.intake.result;

import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import org.jspecify.annotations.Nullable;

/**
 * A test as it was sent: the upload, and what whoever sent it says beside it. What is said beside it does not make the upload another.
 *
 * @param upload the files
 * @param retestReason why the reel is tested again; null when it is not said beside the files
 */
public record SentTest(Upload upload, @Nullable String retestReason) {
    /** The form field that says why a reel is tested again; the document has a key of that name. */
    public static final String RETEST_REASON = "retestReason";

    /** The longest reason. */
    public static final int LONGEST_REASON = 1_000;

    /** An upload with nothing beside it. */
    public SentTest(Upload upload) {
        this(upload, null);
    }

    /**
     * The reason that a form field holds; null when it is left empty.
     *
     * @throws IntakeException CONTENT when it is too long or holds control characters
     */
    public static @Nullable String reason(String field) {
        String reason = field.strip();
        if (reason.length() > LONGEST_REASON || reason.codePoints().anyMatch(Character::isISOControl)) {
            throw IntakeException.of(
                    Kind.CONTENT,
                    RETEST_REASON,
                    "must be plain text on one line, of at most " + LONGEST_REASON + " characters");
        }
        return reason.isEmpty() ? null : reason;
    }
}
