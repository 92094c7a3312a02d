package dev.reelproof.seal;

import java.util.Arrays;
import java.util.Optional;

/** What a leaf of the log speaks of. */
public enum LeafKind {
    /** A result as it was received, with its files. */
    UPLOAD("upload"),
    /** A record with its findings and sweeps. */
    RECORD("record"),
    CERTIFICATE("certificate"),
    /** A certificate that stands for several reels by naming theirs. */
    COLLECTIVE_CERTIFICATE("collective-certificate"),
    /** That a certificate was taken back. */
    WITHDRAWAL("withdrawal"),
    /** That an engineer accepted a pass after a failure. */
    RETEST_ACCEPTANCE("retest-acceptance"),
    /** That a revision of a limit set was found wrong. */
    LIMITS_FOUND_WRONG("limits-found-wrong"),
    /** What was asked to be conceded of a reel. */
    CONCESSION("concession"),
    /** What was decided on it. */
    CONCESSION_DECISION("concession-decision"),
    /** That a record judges an upload once more. */
    JUDGED_AGAIN("judged-again"),
    HOLD("hold"),
    HOLD_RELEASE("hold-release"),
    AUDIT_ENTRY("audit-entry"),
    /** A file that a certificate carries, by its digest alone: there is no row of it. */
    ATTACHMENT("attachment"),
    /** What the log says of itself, such as how many rows were there before it: there is no row of it. */
    NOTE("note");

    private final String word;

    LeafKind(String word) {
        this.word = word;
    }

    /** The kind as leaves, rows and requests spell it. */
    public String word() {
        return word;
    }

    /** Whether a row of the database stands behind such a leaf. */
    public boolean hasRow() {
        return this != ATTACHMENT && this != NOTE;
    }

    /** The kind of that word; empty when there is none. */
    public static Optional<LeafKind> named(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
}
