package dev.reelproof.api.lot;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.lot.TraceLots;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.PositionTrace;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** From a place on a reel back to the stretches of what it was made from. */
@Path("/api/v1/reels/{reel}/positions")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
@Authenticated
public class ReelPositionsResource {
    private final TraceLots trace;

    ReelPositionsResource(TraceLots trace) {
        this.trace = trace;
    }

    /**
     * The stretches behind a place.
     *
     * @param lots each lot of which the stretch is known, nearest first, the reel itself at depth 0
     * @param notKnown each lot of which all or some of the stretch is not known, with the reason
     */
    record PositionsAnswer(String reel, List<Place> lots, List<NotKnown> notKnown) {

        /** Where on a lot; {@code through} names the lots through which it was reached. */
        @Schema(name = "PositionOnLot")
        record Place(
                String id,
                String kind,
                int depth,
                @Nullable String step,
                @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String run,
                @Nullable String machine,
                OffsetDateTime made,
                List<String> through,
                List<Piece> stretches) {}

        /** A stretch, in the unit of its lot, counted from the lot's beginning. */
        record Piece(Quantity from, Quantity to) {}

        /** A lot that went in at a place that is not known. */
        record NotKnown(String lot, String reason) {}
    }

    @GET
    @Operation(
            summary = "Which stretches of its ancestors lie at a place on a reel",
            description =
                    "'at', with 'within' to either side, in 'unit'; from the beginning of the reel. Where no position was"
                            + " reported, it says so and guesses nothing.")
    public PositionsAnswer positions(
            @PathParam("reel") String reel,
            @QueryParam("at") @Nullable String at,
            @QueryParam("within") @DefaultValue("0") String within,
            @QueryParam("unit") @DefaultValue("m") String unit,
            @QueryParam("plant") @Nullable String plantNamed) {
        if (at == null) {
            throw QueryParameters.refused("at", "must be a number, such as at=212&unit=m, not absent");
        }
        PositionTrace found = trace.position(
                reel,
                plantNamed,
                new TraceLots.Place(QueryParameters.number("at", at), QueryParameters.number("within", within), unit));
        return new PositionsAnswer(
                reel,
                found.found().stream().map(ReelPositionsResource::place).toList(),
                found.ends().stream()
                        .map(end -> new PositionsAnswer.NotKnown(end.lot().value(), end.reason()))
                        .toList());
    }

    private static PositionsAnswer.Place place(PositionTrace.Found found) {
        Pedigree.Member lot = found.lot();
        String unit = lot.quantity().unit();
        return new PositionsAnswer.Place(
                lot.id().value(),
                lot.kind().word(),
                found.depth(),
                lot.step(),
                lot.run() == null ? null : lot.run().value(),
                lot.machine(),
                lot.made(),
                found.through().stream().map(LotId::value).toList(),
                found.stretches().stream()
                        .map(stretch -> new PositionsAnswer.Piece(
                                new Quantity(Amount.inUnit(stretch.from(), unit), unit),
                                new Quantity(Amount.inUnit(stretch.to(), unit), unit)))
                        .toList());
    }
}
