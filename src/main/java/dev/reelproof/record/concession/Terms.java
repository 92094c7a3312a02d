package dev.reelproof.record.concession;

import dev.reelproof.quantity.Length;
import java.util.Arrays;
import java.util.List;

/** What a concession concedes. */
public sealed interface Terms {

    /** The kinds of concession. */
    enum Kind {
        USE_AS_IS("use-as-is"),
        REGRADE("regrade"),
        SHORTEN("shorten");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The kind as requests and answers spell it. */
        public String word() {
            return word;
        }

        /** The words of all kinds, in order. */
        public static List<String> words() {
            return Arrays.stream(values()).map(Kind::word).toList();
        }

        /**
         * The kind of that word.
         *
         * @throws IllegalArgumentException when there is none
         */
        public static Kind named(String word) {
            return Arrays.stream(values())
                    .filter(kind -> kind.word.equals(word))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(
                            "unknown kind of concession '" + word + "'; there are " + String.join(", ", words())));
        }
    }

    /** Which kind it is. */
    Kind kind();

    /** The reel is used as it is, though it does not meet its requirements. */
    record UseAsIs() implements Terms {
        @Override
        public Kind kind() {
            return Kind.USE_AS_IS;
        }
    }

    /**
     * The reel becomes one of another product, whose limit set it meets.
     *
     * @param product the code of that product
     */
    record Regrade(String product) implements Terms {
        public Regrade {
            if (product == null || product.isBlank()) {
                throw new IllegalArgumentException("a regrade names the product that the reel becomes");
            }
        }

        @Override
        public Kind kind() {
            return Kind.REGRADE;
        }
    }

    /**
     * The reel is cut to a shorter length and tested again.
     *
     * @param value the new length, in {@code unit}
     * @param unit a unit of length
     */
    record Shorten(double value, String unit) implements Terms {
        public Shorten {
            if (!(Length.of(value, unit).metres() > 0)) {
                throw new IllegalArgumentException("a reel is shortened to a length, not to " + value + " " + unit);
            }
        }

        /** The new length. */
        public Length length() {
            return Length.of(value, unit);
        }

        @Override
        public Kind kind() {
            return Kind.SHORTEN;
        }
    }
}
