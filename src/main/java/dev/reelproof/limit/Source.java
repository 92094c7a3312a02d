package dev.reelproof.limit;

/**
 * Where a figure comes from.
 *
 * @param document document, clause, table
 * @param read true when the figure was read from that source; false when it was written from memory
 */
public record Source(String document, boolean read) {

    public Source {
        if (document == null || document.isBlank()) {
            throw new IllegalArgumentException("a figure needs a source");
        }
    }

    /** The source with its status, for people. */
    public String words() {
        return document + (read ? " (read)" : " (from memory)");
    }
}
