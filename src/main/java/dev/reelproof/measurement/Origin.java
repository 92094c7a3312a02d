package dev.reelproof.measurement;

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

    /** Lines of a file, one a value. A class and not a record, since it holds an array. */
    final class Lines implements Origin {
        private final String file;
        private final int[] lines;

        public Lines(String file, int[] lines) {
            this.file = file;
            this.lines = lines.clone();
        }

        @Override
        public String of(int index) {
            return file + ":" + lines[index];
        }
    }
}
