package dev.reelproof.access;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Tells who is calling, at the moment when it is asked. */
public final class Callers {
    private static final ThreadLocal<@Nullable Caller> ASKED = new ThreadLocal<>();

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
        Caller earlier = ASKED.get();
        return earlier == null ? current.get() : earlier;
    }

    /** Does now, in this thread, what a caller asked for earlier: meanwhile that one is the current caller. */
    public <T> T onBehalfOf(Caller caller, Supplier<T> work) {
        Caller before = ASKED.get();
        ASKED.set(caller);
        try {
            return work.get();
        } finally {
            ASKED.set(before);
        }
    }
}
