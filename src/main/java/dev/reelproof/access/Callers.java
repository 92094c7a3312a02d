package dev.reelproof.access;

import java.util.function.Supplier;

/** Tells who is calling, at the moment when it is asked. */
public final class Callers {
    private final Supplier<Caller> current;

    /**
     * Callers as something else finds them.
     *
     * @param current finds the caller of the request that is being answered; the service itself when there is none
     */
    public Callers(Supplier<Caller> current) {
        this.current = current;
    }

    /** Who is calling; the service itself when no request is being answered. */
    public Caller current() {
        return current.get();
    }
}
