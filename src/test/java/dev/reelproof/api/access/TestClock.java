package dev.reelproof.api.access;

import jakarta.annotation.Priority;
import jakarta.enterprise.inject.Alternative;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

/** In tests the clock of the service: it goes on as time does; stopped, it stands still between two steps. */
@Singleton
@Alternative
@Priority(1)
public class TestClock extends Clock {
    private Duration ahead = Duration.ZERO;
    private Instant stopped;

    /** A step forward. */
    void forward(Duration step) {
        if (stopped == null) {
            ahead = ahead.plus(step);
        } else {
            stopped = stopped.plus(step);
        }
    }

    /** Stops at the beginning of a minute, past what earlier tests made wait. */
    void freshMinute() {
        stopped = instant().truncatedTo(ChronoUnit.MINUTES).plus(Duration.ofMinutes(2));
    }

    /** Goes on from where it stands. */
    void run() {
        ahead = Duration.between(Instant.now(), instant());
        stopped = null;
    }

    @Override
    public Instant instant() {
        return stopped == null ? Instant.now().plus(ahead).truncatedTo(ChronoUnit.MILLIS) : stopped;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        throw new UnsupportedOperationException("UTC alone");
    }
}
