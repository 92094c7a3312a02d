package dev.reelproof.network;

/** Ports that cannot be mapped as stated. */
public final class PortMapException extends RuntimeException {
    /** The index of a fault of the map as a whole. */
    public static final int WHOLE = -1;

    private final int index;

    PortMapException(int index, String message) {
        super(message);
        this.index = index;
    }

    /** The entry that is wrong, from 0; {@link #WHOLE} when none by itself is. */
    public int index() {
        return index;
    }
}
