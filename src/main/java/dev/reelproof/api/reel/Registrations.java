package dev.reelproof.api.reel;

import dev.reelproof.api.Quantity;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The documents that register a product and a reel, for the description of the API; {@code intake.reel} reads them. */
final class Registrations {
    private Registrations() {}

    /** What registers a product. */
    @Schema(name = "ProductRegistration")
    record OfProduct(
            @Schema(nullable = true, description = "in words") @Nullable String description,
            @Schema(required = true, description = "id of the limit set that its reels are judged by") String limitSet,
            @Schema(required = true, minimum = "1", description = "how many pairs the core has") Integer pairs,
            @Schema(nullable = true, description = "conductor gauge in words, such as 23 AWG") @Nullable String gauge,
            @Schema(nullable = true, description = "velocity of propagation as a part of that of light") @Nullable
                    Double nominalVelocity,
            @Schema(nullable = true) @Nullable List<ProductAnswer.LayAnswer> lays,
            @Schema(nullable = true, description = "the units of the core; one unit when left out") @Nullable
                    List<ProductAnswer.UnitAnswer> units) {}

    /** What registers a reel. */
    @Schema(name = "ReelRegistration")
    record OfReel(
            @Schema(nullable = true, description = "the caller's plant when left out") @Nullable String plant,
            @Schema(required = true, description = "code of a registered product") String product,
            @Schema(required = true) Quantity length,
            @Schema(
                            nullable = true,
                            description =
                                    "the first and last length mark on its jacket; between them lies the length, within 1 %"
                                            + " or, where that is more, 1 m or 3 ft")
                    @Nullable
                    LengthMarksAnswer lengthMarks,
            @Schema(nullable = true) @Nullable String order,
            @Schema(nullable = true) @Nullable String customer) {}
}
