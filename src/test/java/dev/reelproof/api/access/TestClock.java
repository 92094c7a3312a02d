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

/** In tests the clock of the doors: it stands still between two steps, and goes forward only. */
@Singleton
@Alternative
@Priority(1)
public class TestClock extends Clock {
    private Instant now = Instant.now().truncatedTo(ChronoUnit.MINUTES);

    void forward(Duration step) {
        now = now.plus(step);
    }

    /** To the next full minute, and past what earlier tests made wait. */
    void freshMinute() {
        now = now.truncatedTo(ChronoUnit.MINUTES).plus(Duration.ofMinutes(2));
    }

    @Override
    public Instant instant() {
        return now;
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
