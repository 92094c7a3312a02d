package dev.reelproof.api.concession;

import dev.reelproof.app.concession.FindConcessions.Standing;
import dev.reelproof.app.concession.RequestConcession;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.wording.Wording;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Asks for a concession of a reel. */
@Path("/api/v1/reels/{reel}/concessions")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Concessions")
@Authenticated
public class ReelConcessionResource {
    private final RequestConcession requesting;

    ReelConcessionResource(RequestConcession requesting) {
        this.requesting = requesting;
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Ask to use a rejected reel as it is, to regrade it or to shorten it",
            description =
                    "Of a reel whose newest test is rejected, or accepted conditionally. A quality manager decides. It lapses"
                            + " when the reel is tested again first. For persons of the role engineer.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = ConcessionAnswer.Request.class)))
    @APIResponse(
            responseCode = "201",
            description = "asked for; Location names the concession",
            content = @Content(schema = @Schema(implementation = ConcessionAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "the reel is not registered")
    @APIResponse(
            responseCode = "409",
            description =
                    "nothing of the reel is to be conceded, another concession is open, or the reel does not meet the new"
                            + " product's limits")
    @APIResponse(responseCode = "422", description = "no reason, an unknown kind or product, or no length")
    public Response request(@PathParam("reel") String reel, @QueryParam("plant") @Nullable String plant, byte[] body) {
        Concession asked = requesting.request(plant, reel, () -> SentConcession.asked(body));
        return Response.created(URI.create("/api/v1/concessions/" + asked.id()))
                .entity(ConcessionAnswer.of(Standing.open(asked), Wording.english()))
                .build();
    }
}
