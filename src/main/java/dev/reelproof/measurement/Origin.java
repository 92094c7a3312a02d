package dev.reelproof.measurement;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Where in an upload the values of a reading or sweep stood. */
public sealed interface Origin {

    /** The place of the value at an index, as a JSON pointer or {@code file:line}. */
    String of(int index);

    /** A value in the JSON document. */
    record JsonValue(String pointer) implements Origin {
        @Override
        public String of(int index) {
            return pointer;
        }
    }

    /** An array of values in the JSON document. */
    record JsonArray(String pointer) implements Origin {
        @Override
        public String of(int index) {
            return pointer + "/" + index;
        }
    }

    /**
     * The frequencies of a network-analyser file, each with the line at which its matrix begins, and how values were derived from
     * them. A class and not a record, because it holds an array.
     */
    final class Network implements Origin {
        private final String file;
        private final int[] lines;
        private final List<Link> chain;

        /**
         * A link of the chain from the file to the value.
         *
         * @param title what was done
         * @param detail the formula or place, with its figures
         * @param value the figure that it turns on; null for the value of the sweep itself
         * @param unit the unit of that figure
         * @param source where the formula comes from; null for the file itself
         */
        public record Link(String title, String detail, @Nullable Double value, String unit, @Nullable String source) {}

        public Network(String file, int[] lines, List<Link> chain) {
            this.file = file;
            this.lines = requireLines(file, lines);
            this.chain = List.copyOf(chain);
        }

        @Override
        public String of(int index) {
            return file + ":" + lines[index];
        }

        public String file() {
            return file;
        }

        /** What was done to come from the file to the value, in order. */
        public List<Link> chain() {
            return chain;
        }
    }

    /** Lines of a file, one a value. A class and not a record, because it holds an array. */
    final class Lines implements Origin {
        private final String file;
        private final int[] lines;

        public Lines(String file, int[] lines) {
            this.file = file;
            this.lines = requireLines(file, lines);
        }

        @Override
        public String of(int index) {
            return file + ":" + lines[index];
        }
    }

    /** A copy of the lines, all from 1, of a file that has a name. */
    private static int[] requireLines(String file, int[] lines) {
        if (file == null || file.isBlank()) {
            throw new IllegalArgumentException("values come from a file that has a name");
        }
        for (int line : lines) {
            if (!(line >= 1)) {
                throw new IllegalArgumentException("lines of " + file + " count from 1, not from " + line);
            }
        }
        return lines.clone();
    }
}
