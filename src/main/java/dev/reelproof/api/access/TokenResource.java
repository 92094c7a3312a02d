package dev.reelproof.api.access;

import dev.reelproof.access.Role;
import dev.reelproof.access.Token;
import dev.reelproof.app.access.ManageTokens;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The tokens that bench stations and scripts send in place of a sign-in. */
@Path("/api/v1/tokens")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Accounts and sign-in")
@Authenticated
public class TokenResource {
    private static final int LONGEST_PLANT = 64;

    private final ManageTokens tokens;

    TokenResource(ManageTokens tokens) {
        this.tokens = tokens;
    }

    /** A token as it is answered. */
    @Schema(name = "Token")
    record Answer(
            String id,
            String name,
            List<String> roles,
            @Schema(description = "the one plant that it may act at; null for every plant", nullable = true) @Nullable
                    String plant,
            boolean demo,
            Instant created,
            @Schema(nullable = true) @Nullable Instant expires,
            @Schema(nullable = true) @Nullable Instant revoked) {
        static Answer of(Token token) {
            return new Answer(
                    token.id(),
                    token.name(),
                    SentAccess.words(token.roles()),
                    token.plant(),
                    token.demo(),
                    token.created(),
                    token.expires(),
                    token.revoked());
        }
    }

    /** A token just made. */
    @Schema(name = "TokenMade")
    record Made(
            String id,
            @Schema(description = "shown this once; only its digest is kept") String secret,
            String name,
            String role,
            @Nullable String plant,
            @Schema(nullable = true) @Nullable Instant expires) {}

    /** A list of tokens. */
    @Schema(name = "Tokens")
    record Listed(List<Answer> tokens) {}

    /** A new token, for the description of the API. */
    @Schema(name = "NewToken")
    record Request(
            String name,
            String role,
            @Schema(description = "ISO 8601 with offset; never when absent", nullable = true) @Nullable
                    OffsetDateTime expires,
            @Schema(description = "the one plant that it may act at; the home plant when absent", nullable = true)
                    @Nullable
                    String plant) {}

    @GET
    @Operation(
            summary = "All tokens, newest first, without their secrets",
            description = "For the role administrator; of a caller's own plant alone when it has one.")
    @APIResponse(responseCode = "200", description = "the tokens")
    @APIResponse(responseCode = "403", description = "the role may not")
    public Listed list() {
        return new Listed(tokens.all().stream().map(Answer::of).toList());
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Make a token", description = "For the role administrator.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = Request.class)))
    @APIResponse(
            responseCode = "201",
            description = "made; this answer alone holds its secret",
            content = @Content(schema = @Schema(implementation = Made.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or belongs to another plant")
    @APIResponse(responseCode = "422", description = "role, plant or time of expiry cannot be")
    public Response make(byte[] body) {
        tokens.requirePermission();
        Faults faults = new Faults();
        SentObject root = SentObject.read("token", body, faults)
                .allow("name", "role", "expires", "plant")
                .require("name", "role");
        Optional<String> name = SentAccess.shownName(root, "name");
        Optional<Role> role = root.text("role", LONGEST_PLANT).flatMap(word -> SentAccess.role(root, "role", word));
        Optional<Instant> expires = root.time("expires").map(OffsetDateTime::toInstant);
        Optional<String> plant = root.text("plant", LONGEST_PLANT);
        faults.refuseIfAny();
        ManageTokens.Made made =
                tokens.make(name.orElseThrow(), role.orElseThrow(), plant.orElse(null), expires.orElse(null));
        return Response.status(Response.Status.CREATED)
                .entity(new Made(
                        made.token().id(),
                        made.secret(),
                        made.token().name(),
                        role.orElseThrow().word(),
                        made.token().plant(),
                        made.token().expires()))
                .build();
    }

    @DELETE
    @Path("/{id}")
    @Operation(
            summary = "Revoke a token, at once and for good",
            description = "For the role administrator. A token that was revoked stays so.")
    @APIResponse(responseCode = "204", description = "requests with it are refused from now on")
    @APIResponse(responseCode = "403", description = "the role may not, or belongs to another plant")
    @APIResponse(responseCode = "404", description = "no such token")
    @APIResponse(responseCode = "422", description = "no reason")
    public Response revoke(String id, @QueryParam("reason") @Nullable String reason) {
        tokens.requirePermission();
        tokens.revoke(id, SentAccess.reason(reason, "/api/v1/tokens/{id}"));
        return Response.noContent().build();
    }
}
