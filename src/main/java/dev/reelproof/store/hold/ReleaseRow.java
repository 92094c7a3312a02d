package dev.reelproof.store.hold;

import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;

/** A release as {@link #COLUMNS} give it; without a unit, of the whole hold. */
record ReleaseRow(long hold, Double from, Double to, String unit, String reason, String by, Instant at) {

    static final String COLUMNS = "hold, range_from, range_to, range_unit, reason, released_by, released";

    Hold.Release toRelease() {
        return new Hold.Release(unit == null ? null : new Hold.Range(from, to, unit), reason, by, UtcTimes.utc(at));
    }
}
