package dev.reelproof.api.lot;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.app.lot.RegisterLot;
import dev.reelproof.app.lot.TraceLots;
import io.quarkus.security.Authenticated;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.net.URI;
import java.time.Duration;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Lots: what was made from what. */
@Path("/api/v1/lots")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
@Authenticated
public class LotResource {
    private static final Duration LONGEST_CLOSE = Duration.ofMinutes(1);

    private final RegisterLot registration;
    private final TraceLots trace;
    private final ReadAhead readAhead;
    private final ObjectMapper mapper;

    LotResource(RegisterLot registration, TraceLots trace, ReadAhead readAhead, ObjectMapper mapper) {
        this.registration = registration;
        this.trace = trace;
        this.readAhead = readAhead;
        this.mapper = mapper;
    }

    @POST
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
        RegisterLot.Registered registered = registration.register(report);
        LotAnswer answer = LotAnswer.of(registered.lot());
        return registered.isNew()
                ? Response.created(URI.create("/api/v1/lots/" + answer.id()))
                        .entity(answer)
                        .build()
                : Response.ok(answer).build();
    }

    @GET
    @Path("/{lot}")
    @Operation(summary = "A lot as registered")
    public LotAnswer get(@PathParam("lot") String lot, @QueryParam("plant") @Nullable String plantNamed) {
        return LotAnswer.of(trace.lot(lot, plantNamed));
    }

    @GET
    @Path("/{lot}/descendants")
    @Operation(
            summary =
                    "A lot and all that descends from it, each once, with the least depth; its reels by where they are",
            description = "Nearest first, and at one depth by identifier; of more than " + TraceLots.MOST_IN_ORDER
                    + " lots, at one depth as they are found. Such an answer is sent while it is found: when that fails, the"
                    + " connection is broken off, and what was sent by then is no JSON.")
    @APIResponse(
            responseCode = "200",
            description = "found",
            content = @Content(schema = @Schema(implementation = DescendantsAnswer.class)))
    public Response descendants(
            @PathParam("lot") String lot,
            @QueryParam("plant") @Nullable String plantNamed,
            @Context RoutingContext request) {
        TraceLots.Descendants found = trace.descendants(lot, plantNamed);
        if (found instanceof TraceLots.Descendants.InOrder all) {
            return Response.ok(DescendantsAnswer.of(all.pedigree(), all.reels()))
                    .build();
        }
        TraceLots.Descendants.Many many = (TraceLots.Descendants.Many) found;
        StreamingOutput answer = out -> {
            try {
                DescendantsStream stream = new DescendantsStream(mapper, out);
                readAhead.run(next -> trace.stream(
                        many,
                        entry -> next.accept(() -> stream.lot(entry)),
                        link -> next.accept(() -> stream.link(link)),
                        reel -> next.accept(() -> stream.reel(reel))));
                stream.end();
            } catch (IOException | RuntimeException e) {
                breakOff(request);
                throw e;
            }
        };
        return Response.ok(answer).build();
    }

    /**
     * Closes the connection: the status was sent, and nothing else can still tell that what comes is not all. Waits until it is closed,
     * for the answer to the failure would be sent behind what was sent, and end it well.
     */
    private static void breakOff(RoutingContext request) {
        try {
            request.request()
                    .connection()
                    .close()
                    .toCompletionStage()
                    .toCompletableFuture()
                    .get(LONGEST_CLOSE.toSeconds(), TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (ExecutionException | TimeoutException e) {
            // The caller is gone already, or takes nothing any more.
        }
    }
}
