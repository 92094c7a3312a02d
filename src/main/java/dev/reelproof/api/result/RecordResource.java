package dev.reelproof.api.result;

import dev.reelproof.api.Problem;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.result.AcceptRetest;
import dev.reelproof.app.result.AdviseOnFailure;
import dev.reelproof.app.result.AdviseOnFailure.Advice;
import dev.reelproof.app.result.JudgedRecord;
import dev.reelproof.app.result.ReadRecords;
import dev.reelproof.app.result.ReadRecords.ExplainedFinding;
import dev.reelproof.app.result.ReadRecords.LimitedSweeps;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.SentObject;
import dev.reelproof.measurement.Subject;
import dev.reelproof.wording.Wording;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Records and what is behind their figures. */
@Path("/api/v1/records/{id}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Results and records")
@Authenticated
public class RecordResource {
    private static final String NO_TYPE_OF_OURS = MediaType.APPLICATION_OCTET_STREAM;
    private static final List<String> SERVED_AS_SENT = List.of(MediaType.APPLICATION_JSON, "text/csv");

    private static final int LONGEST_REASON = 1_000;

    private final ReadRecords readRecords;
    private final AcceptRetest acceptRetest;
    private final AdviseOnFailure adviseOnFailure;

    RecordResource(ReadRecords readRecords, AcceptRetest acceptRetest, AdviseOnFailure adviseOnFailure) {
        this.readRecords = readRecords;
        this.acceptRetest = acceptRetest;
        this.adviseOnFailure = adviseOnFailure;
    }

    /** Why a retest is accepted. */
    @Schema(name = "RetestAcceptanceRequest")
    record AcceptanceRequest(@Schema(required = true) String reason) {}

    @GET
    @Operation(summary = "A record")
    public RecordAnswer get(String id, @QueryParam("plant") @Nullable String plantNamed) {
        return RecordAnswer.of(readRecords.record(plantNamed, id), Wording.english());
    }

    @POST
    @Path("/acceptance")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Accept a pass after a failure, so that the reel may ship and have a certificate",
            description =
                    "Where the plant asks for it, a reel that failed and then passed counts only once an engineer has looked"
                            + " at it. For persons of the roles engineer and quality-manager; of the newest test of the reel alone.")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = AcceptanceRequest.class)))
    @APIResponse(
            responseCode = "201",
            description = "accepted; the record as it stands now",
            content = @Content(schema = @Schema(implementation = RecordAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no such record")
    @APIResponse(responseCode = "409", description = "the record waits for no acceptance, or is not the newest")
    @APIResponse(responseCode = "422", description = "no reason")
    public Response accept(String id, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        JudgedRecord accepted = acceptRetest.accept(plantNamed, id, () -> reason(body));
        return Response.status(Response.Status.CREATED)
                .entity(RecordAnswer.of(accepted, Wording.english()))
                .build();
    }

    private static String reason(byte[] body) {
        Faults faults = new Faults();
        Optional<String> reason = SentObject.read("acceptance", body, faults)
                .allow("reason")
                .require("reason")
                .text("reason", LONGEST_REASON);
        faults.refuseIfAny();
        return reason.orElseThrow();
    }

    @GET
    @Path("/findings/{property}")
    @Operation(
            summary = "A finding with the chain behind its figure",
            description = "By property or by requirement; of several requirements of a property the worst finding.")
    public FindingAnswer finding(String id, String property, @QueryParam("plant") @Nullable String plantNamed) {
        ExplainedFinding found = readRecords.finding(plantNamed, id, property);
        JudgedRecord judged = found.judged();
        return FindingAnswer.explained(
                found.finding(), judged.limitSet(), judged.record().product(), Wording.english(), found.requirements());
    }

    @GET
    @Path("/alternatives")
    @Operation(
            summary = "What else a reel could be: cut shorter, or graded by another limit set of its construction",
            description =
                    "Advice for whoever has the authority; nothing is decided or changed by it. cutTo: the greatest"
                            + " length at which all that fails would pass; null where cutting does not mend it. passes: the other limit"
                            + " sets that accept the result as measured. blockedBy: the properties that fail.")
    @APIResponse(responseCode = "200", description = "the advice")
    @APIResponse(responseCode = "404", description = "no such record")
    public AlternativesAnswer alternatives(String id, @QueryParam("plant") @Nullable String plantNamed) {
        Advice advice = adviseOnFailure.advise(plantNamed, id);
        return AlternativesAnswer.of(advice.judged().record(), advice.alternatives(), Wording.english());
    }

    @GET
    @Path("/sweeps/{property}")
    @Operation(
            summary = "The sweeps of a property, as measured and corrected, with their limit",
            description =
                    "With pair, partner or end: the first such sweep alone, with the limit at each frequency. 'limit' is the"
                            + " one to draw where only one can be; 'limits' has every requirement that binds the property.")
    @APIResponse(
            responseCode = "200",
            description = "the sweeps, or one sweep",
            content = @Content(schema = @Schema(oneOf = {SweepsAnswer.class, SweepsAnswer.One.class})))
    @APIResponse(responseCode = "404", description = "no such record, or no such sweep of it")
    public Object sweeps(
            String id,
            String property,
            @QueryParam("pair") @Nullable String pair,
            @QueryParam("partner") @Nullable String partner,
            @QueryParam("end") @Nullable String end,
            @QueryParam("plant") @Nullable String plantNamed) {
        Integer pairNumber = whole("pair", pair);
        Integer partnerNumber = whole("partner", partner);
        LimitedSweeps found = readRecords.sweeps(
                plantNamed, id, property, sweep -> isOf(sweep.subject(), pairNumber, partnerNumber, end));
        boolean one = pair != null || partner != null || end != null;
        return one
                ? SweepsAnswer.One.of(found.sweeps().get(0), found.drawn(), found.requirements(), Wording.english())
                : SweepsAnswer.of(
                        found.property(), found.sweeps(), found.drawn(), found.requirements(), Wording.english());
    }

    private static boolean isOf(
            Subject subject, @Nullable Integer pair, @Nullable Integer partner, @Nullable String end) {
        return (pair == null || pair.equals(subject.pair()))
                && (partner == null || partner.equals(subject.partner()))
                && (end == null || subject.end() != null && subject.end().word().equals(end));
    }

    private static @Nullable Integer whole(String name, @Nullable String asked) {
        return asked == null ? null : Integer.valueOf(QueryParameters.whole(name, asked));
    }

    @GET
    @Path("/original/{n}")
    @Produces({NO_TYPE_OF_OURS, Problem.MEDIA_TYPE})
    @Operation(
            summary =
                    "A part of the upload as received; parts are counted from 0 in the order of the record's 'original'")
    @APIResponse(responseCode = "200", description = "its bytes", content = @Content(mediaType = NO_TYPE_OF_OURS))
    @APIResponse(responseCode = "404", description = "no such part")
    public Response original(String id, String n, @QueryParam("plant") @Nullable String plantNamed) {
        Part part = readRecords.original(plantNamed, id, QueryParameters.whole("n", n));
        // What was uploaded is offered for saving and never shown as a page of ours.
        return Response.ok(part.bytes(), SERVED_AS_SENT.contains(part.mediaType()) ? part.mediaType() : NO_TYPE_OF_OURS)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"" + part.name().replaceAll("[^A-Za-z0-9._-]", "_") + "\"")
                .build();
    }
}
