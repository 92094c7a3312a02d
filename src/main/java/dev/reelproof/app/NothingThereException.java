package dev.reelproof.app;

import jakarta.ws.rs.NotFoundException;

/** What an address names is not there; the message says what would be. The server's own "not found" has no such message. */
public class NothingThereException extends NotFoundException {
    public NothingThereException(String message) {
        super(message);
    }
}
