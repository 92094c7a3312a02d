package dev.reelproof.genealogy;

import java.util.regex.Pattern;

/**
 * A lot's identifier, unique within its plant; a reel's number is one too. It appears in addresses and on labels.
 *
 * @param value 1 to 64 letters (A to Z, a to z), digits, '.', '_' or '-', beginning with a letter or a digit
 */
public record LotId(String value) implements Comparable<LotId> {
    static final String PATTERN = "[A-Za-z0-9][A-Za-z0-9._-]{0,63}";

    private static final Pattern ALLOWED = Pattern.compile(PATTERN);

    public LotId {
        if (!ALLOWED.matcher(value).matches()) {
            throw new IllegalArgumentException("'" + value + "' cannot identify a lot; use 1 to 64 letters (A to Z,"
                    + " a to z), digits, '.', '_' or '-', beginning with a letter or a digit");
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
