package dev.reelproof.store.hold;

import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.HoldTarget;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A hold as {@link #COLUMNS} give it. */
record HoldRow(
        long id,
        String what,
        String name,
        @Nullable Instant from,
        @Nullable Instant to,
        String reason,
        String by,
        String byKind,
        Instant at) {

    static final String COLUMNS =
            "h.id, h.what, coalesce(h.lot, h.run, h.machine), h.window_from, h.window_to, h.reason, h.held_by,"
                    + " h.held_by_kind, h.held";

    Hold toHold(List<ReleaseRow> releases) {
        return new Hold(
                id,
                new HoldTarget(HoldTarget.What.named(what), name, UtcTimes.utcOrNull(from), UtcTimes.utcOrNull(to)),
                reason,
                by,
                byKind,
                UtcTimes.utc(at),
                releases.stream().map(ReleaseRow::toRelease).toList());
    }
}
