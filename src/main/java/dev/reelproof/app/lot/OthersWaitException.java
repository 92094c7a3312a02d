package dev.reelproof.app.lot;

/** Reports wait for a lot that was about to be registered beside others; it is registered with the plant's lots to itself. */
class OthersWaitException extends RuntimeException {
    OthersWaitException() {
        super("reports wait for this lot", null, false, false);
    }
}
