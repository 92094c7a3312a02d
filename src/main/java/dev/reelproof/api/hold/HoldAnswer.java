package dev.reelproof.api.hold;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.HoldTarget;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A hold, as the HTTP contract has it: one of lot, reel, run and machine says what it is of. */
@Schema(name = "Hold")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record HoldAnswer(
        String id,
        @Nullable String lot,
        @Nullable String reel,
        @Nullable String run,
        @Schema(description = "with from and to") @Nullable String machine,
        @Nullable OffsetDateTime from,
        @Nullable OffsetDateTime to,
        String reason,
        String heldBy,
        OffsetDateTime held,
        boolean open,
        @Schema(
                        description =
                                "how many registered reels it holds now; absent in lists, and when they are too many to be"
                                        + " counted in time")
                @Nullable
                Long reels,
        List<Release> releases) {

    /** A release; with a range, of that stretch of the held lot alone. */
    @Schema(name = "HoldRelease")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Release(String reason, String releasedBy, OffsetDateTime released, @Nullable Range range) {}

    /** A stretch of the held lot, counted from its beginning. */
    @Schema(name = "HeldRange")
    record Range(Quantity from, Quantity to) {}

    /** A list of holds. */
    @Schema(name = "Holds")
    record Listed(List<HoldAnswer> holds) {}

    /** What is to be held: exactly one of lot, reel, run and machine. */
    @Schema(name = "HoldRequest")
    record Request(
            @Nullable String lot,
            @Nullable String reel,
            @Nullable String run,
            @Schema(description = "with from and to") @Nullable String machine,
            @Nullable OffsetDateTime from,
            @Nullable OffsetDateTime to,
            @Schema(required = true) String reason,
            @Nullable String plant) {}

    /** What is to be released. */
    @Schema(name = "HoldReleaseRequest")
    record ReleaseRequest(
            @Schema(required = true) String reason,
            @Schema(description = "a stretch of the held lot or reel; the whole hold when absent") @Nullable
                    Range range) {}

    public static HoldAnswer of(Hold hold, @Nullable Long reels) {
        HoldTarget target = hold.target();
        return new HoldAnswer(
                String.valueOf(hold.id()),
                name(target, HoldTarget.What.LOT),
                name(target, HoldTarget.What.REEL),
                name(target, HoldTarget.What.RUN),
                name(target, HoldTarget.What.MACHINE),
                target.from(),
                target.to(),
                hold.reason(),
                hold.by(),
                hold.at(),
                hold.isOpen(),
                reels,
                hold.releases().stream().map(HoldAnswer::release).toList());
    }

    private static @Nullable String name(HoldTarget target, HoldTarget.What what) {
        return target.what() == what ? target.name() : null;
    }

    private static Release release(Hold.Release release) {
        Hold.Range range = release.range();
        return new Release(
                release.reason(),
                release.by(),
                release.at(),
                range == null
                        ? null
                        : new Range(new Quantity(range.from(), range.unit()), new Quantity(range.to(), range.unit())));
    }
}
