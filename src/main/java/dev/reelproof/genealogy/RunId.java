package dev.reelproof.genealogy;

import java.util.Optional;

/**
 * The identifier of one run of a process step, unique within its plant.
 *
 * @param value as a lot's: 1 to 64 letters (A to Z, a to z), digits, '.', '_' or '-', beginning with a letter or a digit
 */
public record RunId(String value) implements Comparable<RunId> {
    public RunId {
        if (!LotId.isIdentifier(value)) {
            throw new IllegalArgumentException("'" + value + "' cannot identify a run; use 1 to 64 letters (A to Z,"
                    + " a to z), digits, '.', '_' or '-', beginning with a letter or a digit");
        }
    }

    /** The run of a name as somebody wrote it; empty when no run can have that name. */
    public static Optional<RunId> named(String name) {
        return LotId.isIdentifier(name) ? Optional.of(new RunId(name)) : Optional.empty();
    }

    @Override
    public int compareTo(RunId other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
