package dev.reelproof.genealogy;

import java.util.Optional;

/**
 * A lot's identifier, unique within its plant; a reel's number is one too. It appears in addresses and on labels.
 *
 * @param value 1 to 64 letters (A to Z, a to z), digits, '.', '_' or '-', beginning with a letter or a digit
 */
public record LotId(String value) implements Comparable<LotId> {
    private static final int LONGEST = 64;

    public LotId {
        if (!isIdentifier(value)) {
            throw new IllegalArgumentException("'" + value + "' cannot identify a lot; use 1 to 64 letters (A to Z,"
                    + " a to z), digits, '.', '_' or '-', beginning with a letter or a digit");
        }
    }

    /** The lot of a name as somebody wrote it; empty when no lot can have that name. */
    public static Optional<LotId> named(String name) {
        return isIdentifier(name) ? Optional.of(new LotId(name)) : Optional.empty();
    }

    /** Whether it has the form of an identifier. A plain loop: a pedigree is made of a hundred thousand of them. */
    static boolean isIdentifier(String value) {
        if (value.isEmpty() || value.length() > LONGEST || !isLetterOrDigit(value.charAt(0))) {
            return false;
        }
        for (int i = 1; i < value.length(); i++) {
            char mark = value.charAt(i);
            if (!isLetterOrDigit(mark) && mark != '.' && mark != '_' && mark != '-') {
                return false;
            }
        }
        return true;
    }

    private static boolean isLetterOrDigit(char mark) {
        return mark >= 'a' && mark <= 'z' || mark >= 'A' && mark <= 'Z' || mark >= '0' && mark <= '9';
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
