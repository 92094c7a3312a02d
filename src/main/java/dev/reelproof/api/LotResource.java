package dev.reelproof.api;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.Lots;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Lots: what was made from what. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
public class LotResource {
    private final Lots lots;
    private final Plants plants;

    LotResource(Lots lots, Plants plants) {
        this.lots = lots;
        this.plants = plants;
    }

    @POST
    @Path("/lots")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Register a lot with its inputs",
            description = "201 when it is new, 200 when the same lot was registered before, 409 when another one was.")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = LotAnswer.Report.class)))
    @APIResponse(
            responseCode = "201",
            description = "registered",
            content = @Content(schema = @Schema(implementation = LotAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "registered before, with the same content",
            content = @Content(schema = @Schema(implementation = LotAnswer.class)))
    @APIResponse(responseCode = "400", description = "no JSON")
    @APIResponse(responseCode = "409", description = "another lot has this identifier")
    @APIResponse(
            responseCode = "422",
            description = "the lot cannot be so: unknown parent, more taken than is left, unknown kind or unit")
    public Response register(byte[] report) {
        Lot lot = LotReader.read(report, plants.served());
        boolean isNew = lots.register(lot, sha256(report), OffsetDateTime.now(Clock.systemUTC()));
        LotAnswer answer = LotAnswer.of(lots.byId(lot.plant(), lot.id()).orElseThrow());
        return isNew
                ? Response.created(URI.create("/api/v1/lots/" + lot.id()))
                        .entity(answer)
                        .build()
                : Response.ok(answer).build();
    }

    @GET
    @Path("/lots/{lot}")
    @Operation(summary = "A lot as registered")
    public LotAnswer lot(@PathParam("lot") String lot) {
        return LotAnswer.of(find("lot", lot, id -> lots.byId(plants.home(), id)));
    }

    @GET
    @Path("/lots/{lot}/descendants")
    @Operation(summary = "A lot and all that descends from it, each once, with the least depth")
    public PedigreeAnswer descendants(@PathParam("lot") String lot) {
        return PedigreeAnswer.of(find("lot", lot, id -> lots.descendants(plants.home(), id)));
    }

    @GET
    @Path("/reels/{reel}/ancestors")
    @Operation(summary = "A reel and all that it descends from, each once, with the least depth")
    public PedigreeAnswer ancestors(@PathParam("reel") String reel) {
        return PedigreeAnswer.of(find("reel", reel, id -> lots.ancestorsOfReel(plants.home(), id)));
    }

    private <T> T find(String what, String name, Function<LotId, Optional<T>> search) {
        Optional<LotId> id;
        try {
            id = Optional.of(new LotId(name));
        } catch (IllegalArgumentException e) {
            id = Optional.empty();
        }
        return id.flatMap(search)
                .orElseThrow(() -> new NothingThereException(
                        "no " + what + " '" + name + "' is registered at plant " + plants.home()));
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
