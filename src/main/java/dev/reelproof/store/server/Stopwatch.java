package dev.reelproof.store.server;

import java.time.Duration;

/** How long something has taken, by the machine's steady clock: the time of day may be set meanwhile. */
final class Stopwatch {
    private final long begun = System.nanoTime();

    /** The time since this was made. */
    Duration elapsed() {
        return Duration.ofNanos(System.nanoTime() - begun);
    }

    /** Whether it has taken longer than that. */
    boolean isBeyond(Duration longest) {
        return elapsed().compareTo(longest) > 0;
    }
}
