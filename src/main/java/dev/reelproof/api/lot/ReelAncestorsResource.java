package dev.reelproof.api.lot;

import dev.reelproof.app.lot.TraceLots;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What a reel was made from. */
@Path("/api/v1/reels/{reel}/ancestors")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
@Authenticated
public class ReelAncestorsResource {
    private final TraceLots trace;

    ReelAncestorsResource(TraceLots trace) {
        this.trace = trace;
    }

    @GET
    @Operation(summary = "A reel and all that it descends from, each once, with the least depth")
    public PedigreeAnswer ancestors(@PathParam("reel") String reel, @QueryParam("plant") @Nullable String plantNamed) {
        return PedigreeAnswer.of(trace.ancestors(reel, plantNamed));
    }
}
