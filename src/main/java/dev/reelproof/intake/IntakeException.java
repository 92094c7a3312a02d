package dev.reelproof.intake;

import java.util.List;
import java.util.Objects;

/** Something that was sent cannot be taken; nothing of it was kept. */
public final class IntakeException extends RuntimeException {

    /** How it is wrong. */
    public enum Kind {
        /** It cannot be read at all: no JSON, no CSV, not UTF-8, empty, parts missing. */
        MALFORMED,
        /** It can be read, but what it says cannot be. */
        CONTENT
    }

    private final Kind kind;
    private final List<Fault> faults;
    private final int unlisted;

    /**
     * A refusal.
     *
     * @param faults the faults to show, at least one
     * @param unlisted how many more there are that are not shown
     */
    public IntakeException(Kind kind, List<Fault> faults, int unlisted) {
        super(summary(faults, unlisted));
        this.kind = kind;
        this.faults = List.copyOf(faults);
        this.unlisted = unlisted;
    }

    /** A refusal for one fault. */
    public static IntakeException of(Kind kind, String where, String message) {
        return new IntakeException(kind, List.of(new Fault(where, message)), 0);
    }

    /** A refusal for one fault that something else found, in its words. */
    public static IntakeException of(Kind kind, String where, RuntimeException found) {
        return of(kind, where, Objects.requireNonNull(found.getMessage(), "who refuses says why"));
    }

    private static String summary(List<Fault> faults, int unlisted) {
        if (faults.isEmpty()) {
            throw new IllegalArgumentException("a refusal needs a fault");
        }
        Fault first = faults.get(0);
        if (faults.size() == 1 && unlisted == 0) {
            return first.where() + ": " + first.message();
        }
        int count = faults.size() + unlisted;
        return count + " faults" + (unlisted > 0 ? ", of which the first " + faults.size() + " are listed" : "")
                + "; the first is at " + first.where() + ": " + first.message();
    }

    public Kind kind() {
        return kind;
    }

    /** The faults, in the order in which they were found; at most {@value Faults#MOST_LISTED}. */
    public List<Fault> faults() {
        return faults;
    }

    /** How many more faults there are than {@link #faults()} lists. */
    public int unlisted() {
        return unlisted;
    }
}
