package dev.reelproof.genealogy;

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

    @Override
    public int compareTo(RunId other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
