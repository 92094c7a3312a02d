package dev.reelproof.api.reel;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.api.Listing;
import dev.reelproof.api.certificate.CertificateAnswer;
import dev.reelproof.api.hold.HoldAnswer;
import dev.reelproof.api.lot.LotFinder;
import dev.reelproof.api.result.MultipartUpload;
import dev.reelproof.api.result.RecordAnswer;
import dev.reelproof.api.result.ResultSchemaFilter;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.IssueCertificate;
import dev.reelproof.app.certificate.IssueCertificate.Issued;
import dev.reelproof.app.hold.FindHolds;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.app.result.TakeResult;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.intake.Fault;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.Upload;
import dev.reelproof.intake.reel.ReelReader;
import dev.reelproof.intake.reel.ReelRegistration;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.lot.Lots;
import dev.reelproof.store.lot.RegisteredLot;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.reel.RegisteredReel;
import dev.reelproof.store.result.Records;
import dev.reelproof.store.result.Records.Taken;
import dev.reelproof.wording.Wording;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Reels, their tests and their certificates. */
@Path("/api/v1/reels")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Products and reels")
@Authenticated
public class ReelResource {
    private static final int MOST_LISTED = 500;

    private final Reels reels;
    private final Products products;
    private final Records archive;
    private final Certificates certificates;
    private final FindHolds holds;
    private final Lots lots;
    private final LimitSets limitSets;
    private final Plants plants;
    private final TakeResult testDesk;
    private final IssueCertificate certificateDesk;
    private final Callers callers;

    ReelResource(
            Reels reels,
            Products products,
            Records archive,
            Certificates certificates,
            FindHolds holds,
            Lots lots,
            LimitSets limitSets,
            Plants plants,
            TakeResult testDesk,
            IssueCertificate certificateDesk,
            Callers callers) {
        this.reels = reels;
        this.products = products;
        this.archive = archive;
        this.certificates = certificates;
        this.holds = holds;
        this.lots = lots;
        this.limitSets = limitSets;
        this.plants = plants;
        this.testDesk = testDesk;
        this.certificateDesk = certificateDesk;
        this.callers = callers;
    }

    @GET
    @Operation(
            summary = "Find reels by a part of their number, product, order or customer",
            description = "Whatever its case; the newest tested first.")
    public ReelAnswer.Lines search(
            @QueryParam("query") @DefaultValue("") String query,
            @QueryParam("limit") @DefaultValue("20") String limit,
            @QueryParam("plant") String plantNamed) {
        return new ReelAnswer.Lines(reels.search(plants.named(plantNamed, "plant"), query, listLength(limit)).stream()
                .map(ReelAnswer.Line::of)
                .toList());
    }

    /** How long a list may be, as asked for. */
    public static int listLength(String asked) {
        try {
            int limit = Integer.parseInt(asked.trim());
            if (limit >= 1 && limit <= MOST_LISTED) {
                return limit;
            }
        } catch (NumberFormatException e) {
            // Said below, as for a number out of range.
        }
        throw IntakeException.of(
                IntakeException.Kind.CONTENT,
                "limit",
                "must be a whole number from 1 to " + MOST_LISTED + ", not '" + asked + "'");
    }

    @GET
    @Path("/{reel}")
    @Operation(
            summary = "A reel with its records and certificates, newest first, and the open holds that it is under",
            description = "One whose making alone was reported, as a lot of kind reel, has no product yet.")
    public ReelAnswer get(String reel, @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        Optional<RegisteredReel> found = reels.byId(plant, reel);
        if (found.isEmpty()) {
            return ReelAnswer.ofMade(made(plant, reel), holdsOf(plant, reel));
        }
        return ReelAnswer.of(
                found.get(),
                archive.ofReel(plant, reel).stream()
                        .map(record -> RecordAnswer.of(record, limitSets.of(record), Wording.english()))
                        .toList(),
                certificates.ofReel(plant, reel).stream()
                        .map(CertificateAnswer::of)
                        .toList(),
                holdsOf(plant, reel));
    }

    private RegisteredLot made(String plant, String reel) {
        return LotFinder.identifier(reel)
                .flatMap(id -> lots.byId(plant, id))
                .filter(lot -> lot.lot().kind() == LotKind.REEL)
                .orElseThrow(() ->
                        new NothingThereException("Reel '" + reel + "' is not registered at plant " + plant + "."));
    }

    private List<HoldAnswer> holdsOf(String plant, String reel) {
        return Listing.inReason(() -> holds.ofReel(plant, reel)).stream()
                .map(hold -> HoldAnswer.of(hold, null))
                .toList();
    }

    @PUT
    @Path("/{reel}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Register a reel, or change what is registered of it")
    @APIResponse(responseCode = "201", description = "registered")
    @APIResponse(responseCode = "200", description = "registered before; now as sent")
    @APIResponse(responseCode = "400", description = "no JSON")
    @APIResponse(responseCode = "422", description = "the registration cannot be so: unknown product or plant")
    public Response put(String reel, byte[] body) {
        callers.current().require(Action.REGISTER);
        ReelRegistration read = ReelReader.read(reel, body);
        String plant = plants.named(read.plant(), "/plant");
        if (products.byId(plant, read.product()).isEmpty()) {
            throw new IntakeException(
                    IntakeException.Kind.CONTENT,
                    List.of(new Fault(
                            "/product",
                            "unknown product '" + read.product() + "'; register it with PUT /api/v1/products/"
                                    + read.product() + " first")),
                    0);
        }
        RegisteredReel registered = new RegisteredReel(
                plant,
                read.reel(),
                read.product(),
                read.length(),
                read.lengthSent(),
                read.lengthUnit(),
                read.order(),
                read.customer(),
                now());
        boolean isNew = reels.put(registered);
        return Response.status(isNew ? Response.Status.CREATED : Response.Status.OK)
                .entity(ReelAnswer.of(reels.byId(plant, registered.id()).orElseThrow(), null, null, null))
                .build();
    }

    @POST
    @Path("/{reel}/tests")
    @Consumes(MediaType.APPLICATION_JSON)
    @Tag(name = "Results and records")
    @Operation(
            summary = "Take a result and judge it",
            description =
                    "A JSON document, or multipart/form-data with the document as the part 'result' and CSV, Touchstone"
                            + " or ZIP files beside it; a ZIP file may hold the document as 'result.json'. The same upload sent again gives the first record.")
    @RequestBody(
            required = true,
            content = {
                @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(ref = ResultSchemaFilter.REFERENCE)),
                @Content(mediaType = MediaType.MULTIPART_FORM_DATA, schema = @Schema(implementation = Bulk.class))
            })
    @APIResponse(
            responseCode = "201",
            description = "taken; Location names the record",
            content = @Content(schema = @Schema(implementation = RecordAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "taken before; its record",
            content = @Content(schema = @Schema(implementation = RecordAnswer.class)))
    @APIResponse(responseCode = "400", description = "cannot be read")
    @APIResponse(responseCode = "404", description = "the reel is not registered")
    @APIResponse(responseCode = "413", description = "too large")
    @APIResponse(responseCode = "415", description = "neither JSON nor multipart/form-data")
    @APIResponse(responseCode = "422", description = "can be read, but what it says cannot be")
    public Response takeDocument(String reel, @QueryParam("plant") String plantNamed, byte[] body) {
        return take(plants.forAction(Action.UPLOAD, plantNamed, "plant"), reel, Upload.ofDocument(body));
    }

    /** The parts of a multipart upload, for the description of the API. */
    @Schema(name = "ResultUpload")
    record Bulk(
            @Schema(ref = ResultSchemaFilter.REFERENCE) Object result,
            @Schema(description = "any number of CSV, Touchstone and ZIP files, of any part name") String csv) {}

    @POST
    @Path("/{reel}/tests")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Operation(hidden = true)
    public Response takeParts(
            String reel,
            @QueryParam("plant") String plantNamed,
            @HeaderParam(HttpHeaders.CONTENT_TYPE) String contentType,
            byte[] body) {
        return take(
                plants.forAction(Action.UPLOAD, plantNamed, "plant"), reel, MultipartUpload.read(contentType, body));
    }

    private Response take(String plant, String reel, Upload upload) {
        Taken taken = testDesk.take(plant, reel, upload, now());
        RecordAnswer answer = RecordAnswer.of(taken.record(), limitSets.of(taken.record()), Wording.english());
        URI location = URI.create("/api/v1/records/" + answer.id());
        return (taken.first() ? Response.created(location) : Response.ok().location(location))
                .entity(answer)
                .build();
    }

    @POST
    @Path("/{reel}/certificates")
    @Tag(name = "Certificates")
    @Operation(
            summary = "Issue the certificate of a reel's newest record",
            description = "Asked again for the same record, it gives the same certificate.")
    @APIResponse(
            responseCode = "201",
            description = "issued",
            content = @Content(schema = @Schema(implementation = CertificateAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "issued before",
            content = @Content(schema = @Schema(implementation = CertificateAnswer.class)))
    @APIResponse(responseCode = "404", description = "the reel is not registered")
    @APIResponse(
            responseCode = "409",
            description = "the reel may not have one: it is on hold, not accepted, or was never tested")
    public Response certify(String reel, @QueryParam("plant") String plantNamed) {
        Issued issued = certificateDesk.issue(plants.forAction(Action.ISSUE, plantNamed, "plant"), reel, now());
        CertificateAnswer answer = CertificateAnswer.of(issued.certificate());
        return (issued.first() ? Response.created(URI.create(answer.pdf())) : Response.ok())
                .entity(answer)
                .build();
    }

    private static OffsetDateTime now() {
        return OffsetDateTime.now(ZoneOffset.UTC).truncatedTo(ChronoUnit.MILLIS);
    }
}
