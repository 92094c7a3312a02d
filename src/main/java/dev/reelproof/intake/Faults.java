package dev.reelproof.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** The faults found while reading one thing that was sent, so that all are told at once. Not for use by several threads. */
public final class Faults {
    /** How many faults are kept; the rest are only counted. */
    public static final int MOST_LISTED = 50;

    private final List<Fault> listed = new ArrayList<>();
    private int unlisted;

    /** Notes a fault. */
    public void add(String where, String message) {
        if (listed.size() < MOST_LISTED) {
            listed.add(new Fault(where, message));
        } else {
            unlisted++;
        }
    }

    /** The value, or nothing and a fault when making it throws {@link IllegalArgumentException}. */
    public <T> Optional<T> attempt(String where, Supplier<T> value) {
        try {
            return Optional.of(value.get());
        } catch (IllegalArgumentException e) {
            add(where, String.valueOf(e.getMessage()));
            return Optional.empty();
        }
    }

    /** The faults that are kept, in the order in which they were found. */
    public List<Fault> listed() {
        return List.copyOf(listed);
    }

    /** How many faults were found. */
    public int count() {
        return listed.size() + unlisted;
    }

    /**
     * Ends the reading when anything is wrong.
     *
     * @throws IntakeException of kind CONTENT when a fault was noted
     */
    public void refuseIfAny() {
        if (!listed.isEmpty()) {
            throw new IntakeException(IntakeException.Kind.CONTENT, listed, unlisted);
        }
    }
}
