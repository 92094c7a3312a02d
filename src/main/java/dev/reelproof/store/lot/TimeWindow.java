package dev.reelproof.store.lot;

import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import java.time.OffsetDateTime;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/**
 * A time that is asked for.
 *
 * @param from its beginning; any when absent
 * @param to its end, itself included; any when absent
 */
record TimeWindow(@Nullable OffsetDateTime from, @Nullable OffsetDateTime to) {

    /** The condition that something that began and ended lies, at least in part, in the window that {@link #bind} sets. */
    static String overlaps(String began, String ended) {
        return ended + " >= coalesce(cast(:from as timestamptz), '-infinity') and " + began
                + " <= coalesce(cast(:to as timestamptz), 'infinity')";
    }

    /** The condition that a time lies in the window that {@link #bind} sets. */
    static String contains(String time) {
        return overlaps(time, time);
    }

    <T> NativeQuery<T> bind(NativeQuery<T> query) {
        return query.setParameter("from", UtcTimes.instantOrNull(from), Instant.class)
                .setParameter("to", UtcTimes.instantOrNull(to), Instant.class);
    }
}
