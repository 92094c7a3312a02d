package dev.reelproof.api.reel;

import dev.reelproof.measurement.LengthMarks;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The first and last length mark of a reel, as the HTTP contract has them. */
@Schema(name = "LengthMarks")
record LengthMarksAnswer(
        @Schema(required = true, minimum = "0", description = "the mark at one end") double first,
        @Schema(required = true, minimum = "0", description = "the mark at the other end, below or above the first")
                double last,
        @Schema(required = true, description = "the unit of length that the jacket is marked in") String unit) {

    static @Nullable LengthMarksAnswer of(@Nullable LengthMarks marks) {
        return marks == null ? null : new LengthMarksAnswer(marks.first(), marks.last(), marks.unit());
    }
}
