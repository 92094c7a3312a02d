package dev.reelproof.api.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Password;
import dev.reelproof.access.PermissionDeniedException;
import dev.reelproof.api.Problem;
import dev.reelproof.api.Problems;
import dev.reelproof.app.access.Attempt;
import dev.reelproof.app.access.ChangePassword;
import dev.reelproof.app.access.SignIn;
import dev.reelproof.app.access.SignOut;
import dev.reelproof.intake.Fault;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import io.quarkus.security.Authenticated;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.CookieParam;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Signs in and out. */
@Path("/api/v1/session")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Accounts and sign-in")
public class SessionResource {
    private static final String PATH = "/api/v1/session";
    private static final int NOT_SIGNED_IN = 401;
    private static final int UNPROCESSABLE = 422;
    private static final int AT_ONCE = 0;

    private final SignIn signingIn;
    private final SignOut signingOut;
    private final ChangePassword changing;
    private final Callers callers;
    private final CallerIdentity identity;

    SessionResource(
            SignIn signingIn, SignOut signingOut, ChangePassword changing, Callers callers, CallerIdentity identity) {
        this.signingIn = signingIn;
        this.signingOut = signingOut;
        this.changing = changing;
        this.callers = callers;
        this.identity = identity;
    }

    /** Who signed in. */
    @Schema(name = "Session")
    record Answer(
            String name,
            String displayName,
            @Schema(enumeration = {"person", "token"}) String kind,
            @Schema(description = "the one plant of the caller; null for every plant", nullable = true) @Nullable
                    String plant,
            List<String> roles,
            @Schema(description = "the actions that the roles open") List<String> may,
            @Schema(description = "to be sent as X-CSRF-Token with every change; null for a token", nullable = true)
                    @Nullable
                    String csrf,
            @Schema(description = "one of the demo's accounts, or its token") boolean demo) {}

    /** What signs in, for the description of the API. */
    @Schema(name = "SignIn")
    record Credentials(String name, String password) {}

    /** A change of one's own password, for the description of the API. */
    @Schema(name = "PasswordChange")
    record PasswordChange(String current, @Schema(name = "new") String next) {}

    @POST
    @PermitAll
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Sign in", description = "The session's secret comes as a cookie; a new one each time.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = Credentials.class)))
    @APIResponse(responseCode = "204", description = "signed in")
    @APIResponse(responseCode = "401", description = "name or password is wrong, or the account is closed")
    @APIResponse(responseCode = "403", description = "asked for by a page of another site")
    @APIResponse(responseCode = "429", description = "too many wrong attempts; Retry-After says when to try again")
    public Response signIn(
            @HeaderParam("Origin") @Nullable String origin,
            @HeaderParam("Host") @Nullable String host,
            @CookieParam(SessionCookie.NAME) @Nullable String brought,
            byte[] body) {
        requireOwnPage(origin, host);
        Faults faults = new Faults();
        SentObject root = SentObject.read("sign-in", body, faults)
                .allow("name", "password")
                .require("name", "password");
        Optional<String> name = root.text("name", SentAccess.LONGEST_TEXT);
        Optional<String> password = root.text("password", SentAccess.LONGEST_TEXT);
        faults.refuseIfAny();
        Attempt attempt = signingIn.signIn(
                name.orElseThrow(), password.orElseThrow(), callers.current().address(), brought);
        if (attempt instanceof Attempt.Right right) {
            return Response.noContent()
                    .cookie(SessionCookie.of(right.secret()).build())
                    .build();
        }
        if (attempt instanceof Attempt.TooMany tooMany) {
            return Problems.tooManyAttempts(PATH, tooMany.left());
        }
        return Problem.at(
                        "body",
                        NOT_SIGNED_IN,
                        "Not signed in",
                        "Name or password is wrong, or the account is closed; an administrator can set a new password.")
                .response();
    }

    /** A page of another site could sign a browser in under a name of its choice, and read what is done under it. */
    private static void requireOwnPage(@Nullable String origin, @Nullable String host) {
        if (origin != null && (host == null || !host.equalsIgnoreCase(authority(origin)))) {
            throw new PermissionDeniedException(
                    "Sign in from a page of this service; this came from a page of another site.");
        }
    }

    private static @Nullable String authority(String origin) {
        try {
            return URI.create(origin).getRawAuthority();
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    @GET
    @Authenticated
    @Operation(summary = "Who is signed in, and what the roles open")
    @APIResponse(responseCode = "200", description = "who")
    @APIResponse(responseCode = "401", description = "nobody is signed in")
    public Answer get() {
        Caller caller = callers.current();
        return new Answer(
                caller.name(),
                identity.displayName(),
                caller.kind().word(),
                caller.plant(),
                SentAccess.words(caller.roles()),
                Arrays.stream(Action.values())
                        .filter(action -> action.isAllowedTo(caller.roles()))
                        .map(Action::word)
                        .toList(),
                identity.csrf(),
                identity.isDemo());
    }

    @DELETE
    @Authenticated
    @Operation(summary = "Sign out")
    @APIResponse(responseCode = "204", description = "signed out; the session's secret is good for nothing any more")
    @APIResponse(responseCode = "401", description = "nobody is signed in")
    @APIResponse(responseCode = "403", description = "an API token has no session")
    public Response signOut() {
        signingOut.signOut(session());
        return Response.noContent()
                .cookie(SessionCookie.of("").maxAge(AT_ONCE).build())
                .build();
    }

    @POST
    @Path("/password")
    @Authenticated
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Change one's own password", description = "All other sessions of the account end.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = PasswordChange.class)))
    @APIResponse(responseCode = "204", description = "changed")
    @APIResponse(responseCode = "401", description = "nobody is signed in")
    @APIResponse(responseCode = "403", description = "an API token has no password")
    @APIResponse(responseCode = "422", description = "the current password is wrong, or the new one cannot be")
    @APIResponse(responseCode = "429", description = "too many wrong attempts; Retry-After says when to try again")
    public Response changePassword(byte[] body) {
        String session = session();
        Faults faults = new Faults();
        SentObject root = SentObject.read("password", body, faults)
                .allow("current", "new")
                .require("current", "new");
        Optional<String> current = root.text("current", SentAccess.LONGEST_TEXT);
        Optional<Password> next = SentAccess.password(root, "new");
        faults.refuseIfAny();
        Attempt attempt = changing.change(current.orElseThrow(), next.orElseThrow(), session);
        if (attempt instanceof Attempt.TooMany tooMany) {
            return Problems.tooManyAttempts(PATH + "/password", tooMany.left());
        }
        return attempt instanceof Attempt.Right
                ? Response.noContent().build()
                : new Problem(
                                "What was sent cannot be taken",
                                UNPROCESSABLE,
                                "The current password is wrong.",
                                List.of(new Fault("/current", "is not your password")))
                        .response();
    }

    private String session() {
        String session = identity.session();
        if (session == null) {
            throw new PermissionDeniedException(
                    "This is for persons who signed in; an API token has neither session nor"
                            + " password, and is revoked with DELETE /api/v1/tokens/{id}.");
        }
        return session;
    }
}
