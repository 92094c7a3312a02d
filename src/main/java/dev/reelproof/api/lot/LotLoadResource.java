package dev.reelproof.api.lot;

import com.fasterxml.jackson.annotation.JsonRawValue;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.api.access.SentAccess;
import dev.reelproof.app.lot.LoadLots;
import dev.reelproof.app.lot.ReviewLots;
import dev.reelproof.app.lot.WithdrawWaitingLot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.admission.WaitingReport;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.InputStream;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Lots in bulk, and what is still missing or odd in what came. */
@Path("/api/v1/lots")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
@Authenticated
public class LotLoadResource {
    private static final String LINES = "application/x-ndjson";
    private static final String CSV = "text/csv";
    private static final String FEW = "100";

    private final LoadLots loading;
    private final ReviewLots review;
    private final WithdrawWaitingLot withdrawal;

    LotLoadResource(LoadLots loading, ReviewLots review, WithdrawWaitingLot withdrawal) {
        this.loading = loading;
        this.review = review;
        this.withdrawal = withdrawal;
    }

    @POST
    @Path("/bulk")
    @Consumes({LINES, CSV, MediaType.APPLICATION_JSON})
    @Operation(
            summary = "Register many lots, one a line; late, repeated and out-of-order ones are taken",
            description =
                    "As application/x-ndjson one lot a line, in the shape of a single one; as text/csv one row an input"
                            + " or sample, by the columns id, plant, kind, quantity, quantityUnit, made, step, machine, run, line,"
                            + " operator, shift, started, finished, setting:<name>, inputLot, inputQuantity, inputUnit, from, to,"
                            + " positionUnit, onParentFrom, onParentTo, onParentUnit, sampleProperty, sampleValue, sampleUnit,"
                            + " sampleAt, sampleAtUnit, sampleTaken. Good lots are kept whatever the others are.")
    @RequestBody(
            required = true,
            content = {
                @Content(mediaType = LINES, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = CSV, schema = @Schema(type = SchemaType.STRING))
            })
    @APIResponse(
            responseCode = "200",
            description = "what became of them",
            content = @Content(schema = @Schema(implementation = LoadAnswer.class)))
    @APIResponse(responseCode = "422", description = "the columns are not these; nothing is kept")
    public LoadAnswer load(InputStream body, @HeaderParam(HttpHeaders.CONTENT_TYPE) @Nullable MediaType type) {
        boolean isCsv = MediaType.valueOf(CSV).isCompatible(type);
        return LoadAnswer.of(loading.load(body, isCsv ? LoadLots.Format.CSV : LoadLots.Format.LINES));
    }

    /** Reports that wait, and those that waited in vain. */
    record WaitingAnswer(int count, List<Waiting> waiting, List<RefusedLater> refusedLater) {

        /** A report that waits for parents. */
        record Waiting(String id, String kind, OffsetDateTime received, List<String> missing) {}

        /** A report that turned out wrong when its parents came. */
        record RefusedLater(
                String id,
                OffsetDateTime received,
                OffsetDateTime refused,
                String reason,
                @JsonRawValue @Schema(implementation = LotAnswer.Report.class) String report) {}
    }

    @GET
    @Path("/waiting")
    @Operation(summary = "Reports that wait for their parents, and those that turned out wrong when the parents came")
    public WaitingAnswer waiting(
            @QueryParam("plant") @Nullable String plantNamed, @QueryParam("limit") @DefaultValue(FEW) String limit) {
        ReviewLots.Waiting found = review.waiting(plantNamed, most(limit));
        return new WaitingAnswer(
                found.count(),
                found.waiting().stream().map(LotLoadResource::waiting).toList(),
                found.refusedLater().stream()
                        .map(one -> new WaitingAnswer.RefusedLater(
                                one.lot().value(), one.received(), one.refused(), one.reason(), one.reportJson()))
                        .toList());
    }

    private static int most(String limit) {
        return QueryParameters.limit(limit, ReviewLots.MOST_LISTED);
    }

    @DELETE
    @Path("/waiting/{lot}")
    @Operation(
            summary = "Withdraw a report that waits for parents that will never come",
            description =
                    "Its identifier is free again, for the report as it should have been. The audit trail keeps all of the"
                            + " report; what waits for its lot goes on waiting. For the roles that register lots.")
    @APIResponse(responseCode = "204", description = "it waits no more")
    @APIResponse(responseCode = "403", description = "the role may not")
    @APIResponse(responseCode = "404", description = "no report of that lot waits")
    @APIResponse(responseCode = "422", description = "no reason")
    public Response withdraw(
            @PathParam("lot") String lot,
            @QueryParam("reason") @Nullable String reason,
            @QueryParam("plant") @Nullable String plantNamed) {
        withdrawal.withdraw(lot, plantNamed, () -> SentAccess.reason(reason, "/api/v1/lots/waiting/{lot}"));
        return Response.noContent().build();
    }

    private static WaitingAnswer.Waiting waiting(WaitingReport waiting) {
        return new WaitingAnswer.Waiting(
                waiting.lot().value(),
                waiting.kind().word(),
                waiting.received(),
                waiting.missing().stream().map(LotId::value).toList());
    }

    /** Lots in which something can hardly be so. */
    record ImplausibleAnswer(List<Lot> lots) {

        /** A lot, and what can hardly be so in it. */
        record Lot(String id, OffsetDateTime registered, List<LotAnswer.Implausible> implausible) {}
    }

    @GET
    @Path("/implausible")
    @Operation(
            summary = "Lots in which something can hardly be so, the newest first",
            description =
                    "A lot counts anew when one that is registered later does not fit it: 'registered' is then the"
                            + " time of that one.")
    public ImplausibleAnswer implausible(
            @QueryParam("plant") @Nullable String plantNamed, @QueryParam("limit") @DefaultValue(FEW) String limit) {
        return new ImplausibleAnswer(review.implausible(plantNamed, most(limit)).stream()
                .map(one -> new ImplausibleAnswer.Lot(
                        one.lot().value(), one.registered(), LotAnswer.Implausible.of(one.implausible())))
                .toList());
    }

    /** What is not told yet. */
    record IncompleteAnswer(
            @Schema(
                            description = "lots made, and reels registered, from then on were looked at; null for all",
                            nullable = true)
                    @Nullable
                    OffsetDateTime from,
            @Schema(description = "up to then; null for up to now", nullable = true) @Nullable OffsetDateTime to,
            int waitingCount,
            List<WaitingAnswer.Waiting> waiting,
            List<String> reelsWithoutInputs,
            List<Lacking> lacking) {

        /** A lot that lacks inputs of a kind that lots of its kind always have. */
        record Lacking(String id, String kind, OffsetDateTime made, List<String> missing) {}
    }

    @GET
    @Path("/incomplete")
    @Operation(
            summary = "What is not told yet: waiting reports, reels without inputs, lots that lack a kind of input",
            description =
                    "All reports that wait; of reels and lots those registered or made from…to. When there are too many to look"
                            + " at in one answer, it is refused, and a shorter time will do.")
    @APIResponse(responseCode = "200", description = "what is not told, as far as it is known")
    @APIResponse(responseCode = "422", description = "too much to look at")
    public IncompleteAnswer incomplete(
            @QueryParam("plant") @Nullable String plantNamed,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to,
            @QueryParam("limit") @DefaultValue(FEW) String limit) {
        OffsetDateTime begin = QueryParameters.time("from", from);
        OffsetDateTime end = QueryParameters.time("to", to);
        ReviewLots.Incomplete found = review.incomplete(plantNamed, begin, end, most(limit));
        return new IncompleteAnswer(
                begin,
                end,
                found.waitingCount(),
                found.waiting().stream().map(LotLoadResource::waiting).toList(),
                found.reelsWithoutInputs().stream().map(LotId::value).toList(),
                found.lacking().stream()
                        .map(one -> new IncompleteAnswer.Lacking(
                                one.lot().value(), one.kind().word(), one.made(), one.missing()))
                        .toList());
    }
}
