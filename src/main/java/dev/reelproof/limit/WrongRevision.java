package dev.reelproof.limit;

import java.time.OffsetDateTime;
import java.util.Objects;

/**
 * That two persons of a plant found a revision of a limit set wrong. Its file stays as it is: what was judged by it was judged by it.
 *
 * @param limitSet the set
 * @param revision its revision, from 1
 * @param reason what is wrong with it
 * @param askedBy who asked to have it marked so
 * @param approvedBy who approved that: somebody else
 * @param at when
 */
public record WrongRevision(
        String limitSet, int revision, String reason, String askedBy, String approvedBy, OffsetDateTime at) {

    public WrongRevision {
        Objects.requireNonNull(limitSet, "a revision is one of a limit set");
        Objects.requireNonNull(at, "a revision is found wrong at some time");
        if (!(revision >= 1)) {
            throw new IllegalArgumentException("revisions count from 1, not " + revision);
        }
        if (reason == null || reason.isBlank()) {
            throw new IllegalArgumentException(limitSet + " revision " + revision + " is wrong for a reason");
        }
        if (askedBy.equals(approvedBy)) {
            throw new IllegalArgumentException(limitSet + " revision " + revision
                    + " is found wrong by two persons, not by " + askedBy + " alone");
        }
    }
}
