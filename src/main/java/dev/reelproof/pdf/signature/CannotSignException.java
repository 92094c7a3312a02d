package dev.reelproof.pdf.signature;

import org.jspecify.annotations.Nullable;

/** Nothing can be signed, as the key, the device or the time-stamp authority stands; the message says which, and what to do. */
public class CannotSignException extends RuntimeException {
    public CannotSignException(String message) {
        this(message, null);
    }

    public CannotSignException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
