package dev.reelproof.store.hold;

import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** A release as {@link #COLUMNS} give it; without a unit, of the whole hold. */
record ReleaseRow(
        long hold,
        @Nullable Double from,
        @Nullable Double to,
        @Nullable String unit,
        String reason,
        String by,
        Instant at) {

    static final String COLUMNS = "hold, range_from, range_to, range_unit, reason, released_by, released";

    Hold.Release toRelease() {
        return new Hold.Release(range(), reason, by, UtcTimes.utc(at));
    }

    /** The database holds all three columns of a range, or none. */
    private Hold.@Nullable Range range() {
        return from == null || to == null || unit == null ? null : new Hold.Range(from, to, unit);
    }
}
