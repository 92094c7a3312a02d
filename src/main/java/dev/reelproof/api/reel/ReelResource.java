package dev.reelproof.api.reel;

import dev.reelproof.api.QueryParameters;
import dev.reelproof.api.result.MultipartUpload;
import dev.reelproof.api.result.RecordAnswer;
import dev.reelproof.api.result.ResultSchemaFilter;
import dev.reelproof.app.reel.FindReels;
import dev.reelproof.app.reel.RegisterReel;
import dev.reelproof.app.reel.RegisterReel.Registered;
import dev.reelproof.app.result.TakeResult;
import dev.reelproof.app.result.TakeResult.TakenResult;
import dev.reelproof.intake.reel.ReelReader;
import dev.reelproof.intake.result.SentTest;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.record.ScannedCode;
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
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** Reels and their tests. */
@Path("/api/v1/reels")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Products and reels")
@Authenticated
public class ReelResource {
    private final FindReels findReels;
    private final RegisterReel registerReel;
    private final TakeResult takeResult;

    ReelResource(FindReels findReels, RegisterReel registerReel, TakeResult takeResult) {
        this.findReels = findReels;
        this.registerReel = registerReel;
        this.takeResult = takeResult;
    }

    @GET
    @Operation(
            summary = "Find reels by a part of their number, product, order or customer",
            description =
                    "Whatever its case; the newest tested first. What a scanner puts around a number is taken away: a symbology"
                            + " identifier, start and stop characters, Tab or Enter.")
    public ReelAnswer.Lines search(
            @QueryParam("query") @DefaultValue("") String query,
            @QueryParam("limit") @DefaultValue("20") String limit,
            @QueryParam("plant") @Nullable String plantNamed) {
        return ReelAnswer.Lines.of(findReels.search(
                plantNamed, QueryParameters.text("query", ScannedCode.of(query)), QueryParameters.limit(limit)));
    }

    @GET
    @Path("/{reel}")
    @Operation(
            summary = "A reel with its records and certificates, newest first, and the open holds that it is under",
            description = "One whose making alone was reported, as a lot of kind reel, has no product yet.")
    public ReelAnswer get(String reel, @QueryParam("plant") @Nullable String plantNamed) {
        return ReelAnswer.of(findReels.one(plantNamed, reel));
    }

    @PUT
    @Path("/{reel}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Register a reel, or change what is registered of it")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = Registrations.OfReel.class)))
    @APIResponse(
            responseCode = "201",
            description = "registered",
            content = @Content(schema = @Schema(implementation = ReelAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "registered before; now as sent",
            content = @Content(schema = @Schema(implementation = ReelAnswer.class)))
    @APIResponse(responseCode = "400", description = "no JSON")
    @APIResponse(responseCode = "422", description = "the registration cannot be so: unknown product or plant")
    public Response put(String reel, byte[] body) {
        Registered registered = registerReel.register(() -> ReelReader.read(reel, body));
        return Response.status(registered.isNew() ? Response.Status.CREATED : Response.Status.OK)
                .entity(ReelAnswer.of(registered.reel()))
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
                            + " or ZIP files beside it; a ZIP file may hold the document as 'result.json'. The same upload sent again gives the first"
                            + " record, which says whether it is the newest. A result that names another reel is refused. A form"
                            + " may say in the field 'retestReason' why the reel is tested again.")
    @RequestBody(
            required = true,
            content = {
                @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(ref = ResultSchemaFilter.REFERENCE)),
                @Content(
                        mediaType = MediaType.MULTIPART_FORM_DATA,
                        schema =
                                @Schema(
                                        type = SchemaType.OBJECT,
                                        requiredProperties = "result",
                                        additionalProperties = FileUpload.class,
                                        description =
                                                "The document as the part 'result', and any number of CSV, Touchstone and"
                                                        + " ZIP files, of any part name"))
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
    @APIResponse(responseCode = "409", description = "tested as often as the plant allows, and it would pass")
    @APIResponse(responseCode = "413", description = "too large")
    @APIResponse(responseCode = "415", description = "neither JSON nor multipart/form-data")
    @APIResponse(responseCode = "422", description = "can be read, but what it says cannot be")
    public Response takeDocument(String reel, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        return take(plantNamed, reel, () -> new SentTest(Upload.ofDocument(body)));
    }

    @POST
    @Path("/{reel}/tests")
    @Consumes(MediaType.MULTIPART_FORM_DATA)
    @Operation(hidden = true)
    public Response takeParts(
            String reel,
            @QueryParam("plant") @Nullable String plantNamed,
            @HeaderParam(HttpHeaders.CONTENT_TYPE) String contentType,
            byte[] body) {
        return take(plantNamed, reel, () -> MultipartUpload.read(contentType, body));
    }

    private Response take(@Nullable String plantNamed, String reel, Supplier<SentTest> sent) {
        TakenResult taken = takeResult.take(plantNamed, reel, sent);
        RecordAnswer answer = RecordAnswer.of(taken.judged(), Wording.english());
        URI location = URI.create("/api/v1/records/" + answer.id());
        return (taken.first() ? Response.created(location) : Response.ok().location(location))
                .entity(answer)
                .build();
    }
}
