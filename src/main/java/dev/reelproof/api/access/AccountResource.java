package dev.reelproof.api.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountChange;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import dev.reelproof.app.access.ManageAccounts;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PATCH;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The persons who may sign in. */
@Path("/api/v1/accounts")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Accounts and sign-in")
@Authenticated
public class AccountResource {
    private final ManageAccounts accounts;

    AccountResource(ManageAccounts accounts) {
        this.accounts = accounts;
    }

    /** An account as it is answered. */
    @Schema(name = "Account")
    record Answer(String name, String displayName, List<String> roles, boolean active, boolean demo, Instant created) {
        static Answer of(Account account) {
            return new Answer(
                    account.name(),
                    account.displayName(),
                    SentAccess.words(account.roles()),
                    account.active(),
                    account.demo(),
                    account.created());
        }
    }

    /** A list of accounts. */
    @Schema(name = "Accounts")
    record Listed(List<Answer> accounts) {}

    /** A new account, for the description of the API. */
    @Schema(name = "NewAccount")
    record Request(String name, String displayName, List<String> roles, String password) {}

    /** A change of an account, for the description of the API. */
    @Schema(name = "AccountChange")
    record Change(
            @Schema(nullable = true) @Nullable String displayName,
            @Schema(nullable = true) @Nullable List<String> roles,
            @Schema(nullable = true) @Nullable Boolean active,
            @Schema(nullable = true) @Nullable String password,
            String reason) {}

    @GET
    @Operation(summary = "All accounts, by name", description = "For the role administrator.")
    @APIResponse(responseCode = "200", description = "the accounts")
    @APIResponse(responseCode = "403", description = "the role may not")
    public Listed list() {
        return new Listed(accounts.all().stream().map(Answer::of).toList());
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Make an account", description = "For the role administrator.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = Request.class)))
    @APIResponse(
            responseCode = "201",
            description = "made",
            content = @Content(schema = @Schema(implementation = Answer.class)))
    @APIResponse(responseCode = "403", description = "the role may not")
    @APIResponse(responseCode = "409", description = "there is an account of this name, or of one that reads like it")
    @APIResponse(responseCode = "422", description = "name, roles or password cannot be")
    public Response make(byte[] body) {
        accounts.requirePermission();
        Faults faults = new Faults();
        SentObject root = SentObject.read("account", body, faults)
                .allow("name", "displayName", "roles", "password")
                .require("name", "displayName", "roles", "password");
        Optional<AccountName> name = SentAccess.name(root, "name");
        Optional<String> displayName = SentAccess.shownName(root, "displayName");
        Optional<Set<Role>> roles = SentAccess.roles(root, "roles");
        Optional<Password> password = SentAccess.password(root, "password");
        faults.refuseIfAny();
        Account made = accounts.make(
                name.orElseThrow(), displayName.orElseThrow(), roles.orElseThrow(), password.orElseThrow());
        return Response.status(Response.Status.CREATED).entity(Answer.of(made)).build();
    }

    @PATCH
    @Path("/{name}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Change an account",
            description = "For the role administrator. A new password, or 'active': false, ends the account's sessions;"
                    + " roles count from the next request on.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = Change.class)))
    @APIResponse(responseCode = "200", description = "changed")
    @APIResponse(responseCode = "403", description = "the role may not")
    @APIResponse(responseCode = "404", description = "no such account")
    @APIResponse(responseCode = "409", description = "it is the last active administrator")
    @APIResponse(responseCode = "422", description = "roles or password cannot be, or there is no reason")
    public Answer change(String name, byte[] body) {
        accounts.requirePermission();
        Faults faults = new Faults();
        SentObject root = SentObject.read("account", body, faults)
                .allow("displayName", "roles", "active", "password", "reason")
                .require("reason");
        AccountChange change = new AccountChange(
                SentAccess.shownName(root, "displayName").orElse(null),
                SentAccess.roles(root, "roles").orElse(null),
                root.truth("active").orElse(null),
                SentAccess.password(root, "password").orElse(null));
        Optional<String> reason = root.text("reason", SentAccess.LONGEST_REASON);
        faults.refuseIfAny();
        return Answer.of(accounts.change(name, change, reason.orElseThrow()));
    }
}
