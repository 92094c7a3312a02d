package dev.reelproof.genealogy;

/**
 * A lot's identifier, unique within its plant; a reel's number is one too.
 *
 * @param value 1 to 100 characters, no control characters, no space at either end
 */
public record LotId(String value) implements Comparable<LotId> {
    private static final int LONGEST = 100;

    public LotId {
        if (value.isEmpty() || value.length() > LONGEST) {
            throw new IllegalArgumentException(
                    "a lot's identifier has 1 to " + LONGEST + " characters, not " + value.length());
        }
        if (!value.equals(value.strip()) || value.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException("the lot's identifier '" + value.replaceAll("\\p{Cntrl}", "?")
                    + "' must have no control characters and no space at either end");
        }
    }

    @Override
    public int compareTo(LotId other) {
        return value.compareTo(other.value);
    }

    @Override
    public String toString() {
        return value;
    }
}
