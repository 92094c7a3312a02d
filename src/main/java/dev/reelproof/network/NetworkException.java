package dev.reelproof.network;

/** A network-analyser file that cannot be taken, with the place in it. */
public final class NetworkException extends RuntimeException {
    private final String where;

    /**
     * A refusal.
     *
     * @param file the file's name
     * @param line the line, from 1
     * @param message what is wrong and what would be right
     */
    public NetworkException(String file, long line, String message) {
        super(message);
        this.where = file + ":" + line;
    }

    /** The place, as {@code file:line}. */
    public String where() {
        return where;
    }
}
