package dev.reelproof.store;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/** Times as rows hold them. */
public final class UtcTimes {
    private UtcTimes() {}

    public static OffsetDateTime utc(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }

    public static @Nullable OffsetDateTime utcOrNull(@Nullable Instant instant) {
        return instant == null ? null : utc(instant);
    }

    public static Instant instant(OffsetDateTime time) {
        return time.toInstant();
    }

    public static @Nullable Instant instantOrNull(@Nullable OffsetDateTime time) {
        return time == null ? null : instant(time);
    }
}
