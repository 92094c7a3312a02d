package dev.reelproof.api.access;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Password;
import dev.reelproof.api.Problem;
import dev.reelproof.api.Problems;
import dev.reelproof.app.access.Attempt;
import dev.reelproof.app.access.SetUp;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The first administrator of an installation. */
@Path("/api/v1/set-up")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Accounts and sign-in")
public class SetUpResource {
    private static final String PATH = "/api/v1/set-up";
    private static final int FORBIDDEN = 403;

    private final SetUp setUp;
    private final Callers callers;

    SetUpResource(SetUp setUp, Callers callers) {
        this.setUp = setUp;
        this.callers = callers;
    }

    /** What sets up, for the description of the API. */
    @Schema(name = "SetUp")
    record Request(
            @Schema(description = "what follows # in the set-up link") String token,
            String name,
            String displayName,
            String password) {}

    /** The administrator that was made. */
    @Schema(name = "AdministratorMade")
    record Made(String name) {}

    @POST
    @PermitAll
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Make the first administrator, by the set-up link that the first start prints",
            description = "The link works once, within 24 hours, and only while nobody can sign in.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = Request.class)))
    @APIResponse(
            responseCode = "201",
            description = "made; sign in with name and password",
            content = @Content(schema = @Schema(implementation = Made.class)))
    @APIResponse(responseCode = "403", description = "the link is unknown, expired or was used")
    @APIResponse(responseCode = "422", description = "name or password cannot be")
    @APIResponse(responseCode = "429", description = "too many attempts; Retry-After says when to try again")
    public Response setUp(byte[] body) {
        Faults faults = new Faults();
        SentObject root = SentObject.read("set-up", body, faults)
                .allow("token", "name", "displayName", "password")
                .require("token", "name", "displayName", "password");
        Optional<String> token = root.text("token", SentAccess.LONGEST_TEXT);
        Optional<AccountName> name = SentAccess.name(root, "name");
        Optional<String> displayName = SentAccess.shownName(root, "displayName");
        Optional<Password> password = SentAccess.password(root, "password");
        faults.refuseIfAny();
        Attempt attempt = setUp.use(
                token.orElseThrow(),
                name.orElseThrow(),
                displayName.orElseThrow(),
                password.orElseThrow(),
                callers.current().address());
        if (attempt instanceof Attempt.Right) {
            return Response.status(Response.Status.CREATED)
                    .entity(new Made(name.orElseThrow().text()))
                    .build();
        }
        if (attempt instanceof Attempt.TooMany tooMany) {
            return Problems.tooManyAttempts(PATH, tooMany.left());
        }
        return Problem.at(
                        "/token",
                        FORBIDDEN,
                        "You may not do this",
                        "This set-up link is unknown, expired or was used. While nobody can sign in, each start of the"
                                + " service prints a new one.")
                .response();
    }
}
