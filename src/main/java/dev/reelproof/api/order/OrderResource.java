package dev.reelproof.api.order;

import dev.reelproof.access.Action;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.api.certificate.CollectiveAnswer;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindCollectives;
import dev.reelproof.app.order.FindOrder;
import dev.reelproof.app.order.HandOff;
import dev.reelproof.app.order.IssueCollective;
import dev.reelproof.app.order.IssueForOrder;
import dev.reelproof.certificate.HandOffLine;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Customer orders and their certificates. */
@Path("/api/v1")
@Tag(name = "Orders")
@Authenticated
public class OrderResource {
    private static final String ZIP = "application/zip";
    private static final String TEXT = MediaType.TEXT_PLAIN + ";charset=UTF-8";

    private final FindOrder find;
    private final IssueForOrder issuing;
    private final IssueCollective collective;
    private final FindCollectives collectives;
    private final HandOff handOff;
    private final Plants plants;

    OrderResource(
            FindOrder find,
            IssueForOrder issuing,
            IssueCollective collective,
            FindCollectives collectives,
            HandOff handOff,
            Plants plants) {
        this.find = find;
        this.issuing = issuing;
        this.collective = collective;
        this.collectives = collectives;
        this.handOff = handOff;
        this.plants = plants;
    }

    @GET
    @Path("/orders/{order}")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "An order with its reels, their certificates, and what they lack before they may be shipped",
            description = "The order is named exactly as registered; the search finds how. Reels by number, at most "
                    + FindOrder.MOST_LISTED + ".")
    @APIResponse(
            responseCode = "200",
            description = "the order",
            content = @Content(schema = @Schema(implementation = OrderAnswer.class)))
    @APIResponse(responseCode = "404", description = "no reel is registered for it")
    public OrderAnswer get(@PathParam("order") String order, @QueryParam("plant") @Nullable String plantNamed) {
        FindOrder.Order found = find.one(plantNamed, QueryParameters.text("order", order));
        return OrderAnswer.of(found, collectives.ofOrder(plants.named(plantNamed, "plant"), found.order()));
    }

    @POST
    @Path("/orders/{order}/certificates")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Issue the certificates of all reels of an order",
            description =
                    "They are issued one after the other; the answer says where to ask how far they have come. While a batch"
                            + " of the order is not finished, the answer is that one.")
    @APIResponse(
            responseCode = "202",
            description = "begun",
            content = @Content(schema = @Schema(implementation = BatchAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "begun before, and not finished yet",
            content = @Content(schema = @Schema(implementation = BatchAnswer.class)))
    @APIResponse(responseCode = "404", description = "no reel is registered for it")
    public Response issue(@PathParam("order") String order, @QueryParam("plant") @Nullable String plantNamed) {
        IssueForOrder.Asked asked =
                issuing.ask(plants.forAction(Action.ISSUE, plantNamed, "plant"), QueryParameters.text("order", order));
        BatchAnswer answer = BatchAnswer.of(asked.batch());
        return Response.status(asked.isNew() ? Response.Status.ACCEPTED : Response.Status.OK)
                .location(URI.create("/api/v1/certificate-batches/" + answer.id()))
                .entity(answer)
                .build();
    }

    @POST
    @Path("/orders/{order}/collective-certificate")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Issue one certificate over several reels of an order",
            description =
                    "Each reel must have a current certificate and lack nothing for shipping; the collective certificate names"
                            + " these, with a summary and a page for each reel. Without a body, for all reels of the order, at"
                            + " most 200. It is current only while each certificate that it names is; its PDF and verification"
                            + " are at the routes of certificates, under its number.")
    @RequestBody(required = false, content = @Content(schema = @Schema(implementation = SentSelection.Selection.class)))
    @APIResponse(
            responseCode = "201",
            description = "issued",
            content = @Content(schema = @Schema(implementation = CollectiveAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "one that names exactly these certificates was issued before",
            content = @Content(schema = @Schema(implementation = CollectiveAnswer.class)))
    @APIResponse(responseCode = "404", description = "no reel is registered for it")
    @APIResponse(
            responseCode = "409",
            description = "reels have no current certificate, each with the reason; or there are too many reels")
    @APIResponse(responseCode = "422", description = "reels is no list of 1 to 200 numbers")
    @APIResponse(responseCode = "503", description = "nothing can be signed at present; ask again")
    public Response collective(
            @PathParam("order") String order, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        IssueCollective.Issued issued = collective.issue(
                plants.forAction(Action.ISSUE, plantNamed, "plant"),
                QueryParameters.text("order", order),
                SentSelection.of(body));
        CollectiveAnswer answer = CollectiveAnswer.of(issued.certificate());
        return issued.first()
                ? Response.created(URI.create(answer.pdf())).entity(answer).build()
                : Response.ok(answer).build();
    }

    @GET
    @Path("/certificate-batches/{id}")
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(summary = "How far the certificates of an order have come, and which were not issued and why")
    @APIResponse(
            responseCode = "200",
            description = "the batch",
            content = @Content(schema = @Schema(implementation = BatchAnswer.class)))
    @APIResponse(responseCode = "404", description = "no such batch")
    public BatchAnswer progress(@PathParam("id") String id, @QueryParam("plant") @Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        return BatchAnswer.of(issuing.progress(plant, QueryParameters.id("id", id)));
    }

    @GET
    @Path("/orders/{order}/certificates.txt")
    @Produces(TEXT)
    @Operation(
            summary = "What the certificates of an order state, as text for a mail",
            description =
                    "Of those that may be relied on now: number, reel, what it states, where it is verified; then the reels"
                            + " that lack one, and why.")
    @APIResponse(
            responseCode = "200",
            description = "the text",
            content = @Content(mediaType = MediaType.TEXT_PLAIN, schema = @Schema(implementation = String.class)))
    @APIResponse(responseCode = "404", description = "no reel is registered for it")
    public String text(
            @PathParam("order") String order, @QueryParam("plant") @Nullable String plantNamed, UriInfo request) {
        return HandOffText.of(handOff.of(plantNamed, QueryParameters.text("order", order)), request.getBaseUri());
    }

    @GET
    @Path("/orders/{order}/certificates.zip")
    @Produces(ZIP)
    @Operation(
            summary = "The certificates of an order as ZIP, with the text about them",
            description =
                    "Those that may be relied on now. It is sent while it is made; when that fails, what was sent is no ZIP.")
    @APIResponse(
            responseCode = "200",
            description = "the certificates",
            content = @Content(mediaType = ZIP, schema = @Schema(type = SchemaType.STRING, format = "binary")))
    @APIResponse(responseCode = "404", description = "no reel is registered for it")
    public Response zip(
            @PathParam("order") String order, @QueryParam("plant") @Nullable String plantNamed, UriInfo request) {
        HandOff.Parcel parcel = handOff.of(plantNamed, QueryParameters.text("order", order));
        String text = HandOffText.of(parcel, request.getBaseUri());
        StreamingOutput answer = out -> {
            // Not closed when something fails on the way: its end would make what was sent a whole ZIP.
            ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
            zip.setLevel(Deflater.BEST_SPEED);
            zip.putNextEntry(new ZipEntry("certificates.txt"));
            zip.write(text.getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
            for (HandOffLine line : parcel.certificates()) {
                zip.putNextEntry(new ZipEntry(line.number() + ".pdf"));
                zip.write(handOff.pdf(parcel, line));
                zip.closeEntry();
            }
            zip.finish();
            zip.flush();
        };
        return Response.ok(answer, ZIP)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + fileName(order) + "\"")
                .build();
    }

    /** A name of letters, digits and dashes, whatever the order is called. */
    private static String fileName(String order) {
        String safe = order.replaceAll("[^A-Za-z0-9]+", "-").replaceAll("^-|-$", "");
        return "certificates" + (safe.isEmpty() ? "" : "-" + safe) + ".zip";
    }
}
