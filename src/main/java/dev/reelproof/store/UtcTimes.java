package dev.reelproof.store;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/** Times as rows hold them. */
public final class UtcTimes {
    private UtcTimes() {}

    public static OffsetDateTime utc(Instant instant) {
        return instant == null ? null : instant.atOffset(ZoneOffset.UTC);
    }

    public static Instant instant(OffsetDateTime time) {
        return time == null ? null : time.toInstant();
    }
}
