package dev.reelproof.api;

import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.SearchTooLargeException;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.function.Supplier;

/** What lists are asked with: how many, from when to when. */
public final class Listing {
    private Listing() {}

    /**
     * A time of a query; null when it is not given.
     *
     * @throws IntakeException when it is not ISO 8601 with its offset
     */
    public static OffsetDateTime time(String where, String text) {
        try {
            return text == null ? null : OffsetDateTime.parse(text);
        } catch (DateTimeParseException e) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    where,
                    "'" + text + "' is not a time in ISO 8601 with its offset, such as 2026-03-02T14:05:00Z");
        }
    }

    /**
     * What is found, in the time that one answer may take.
     *
     * @throws IntakeException when it takes longer
     */
    public static <T> T inReason(Supplier<T> search) {
        try {
            return search.get();
        } catch (SearchTooLargeException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "query", e.getMessage());
        }
    }
}
