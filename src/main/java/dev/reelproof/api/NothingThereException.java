package dev.reelproof.api;

import jakarta.ws.rs.NotFoundException;

/** What an address names is not there; the message says what would be. The server's own "not found" has no such message. */
class NothingThereException extends NotFoundException {
    NothingThereException(String message) {
        super(message);
    }
}
