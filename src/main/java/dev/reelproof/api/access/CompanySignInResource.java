package dev.reelproof.api.access;

import dev.reelproof.access.Callers;
import dev.reelproof.access.CompanyPerson;
import dev.reelproof.access.NotAuthenticatedException;
import dev.reelproof.app.access.CompanySignIn;
import io.quarkus.oidc.OidcSession;
import io.quarkus.security.Authenticated;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.ws.rs.CookieParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.regex.Pattern;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Signs in with the company's identity provider: a person whom it authenticates gets a session of ours. */
@Path(CompanySignInResource.PATH)
@Tag(name = "Accounts and sign-in")
public class CompanySignInResource {
    /** Where the provider is asked, and where it sends the browser back to. */
    static final String PATH = "/api/v1/session/identity-provider";

    // OpenID Connect Core 1.0, 5.1 Standard Claims (from memory).
    private static final String NAME = "name";

    private static final String FIRST_PAGE = "/";
    private static final String SIGN_IN_PAGE = "/sign-in.html?provider=";

    // A path of ours: two slashes, or a slash and a backslash, would begin the name of another host.
    private static final Pattern OWN_PAGE = Pattern.compile("/(?![/\\\\])[^\\\\\\p{Cntrl}]*");

    private final CompanySignIn companySignIn;
    private final Callers callers;
    private final SecurityIdentity identity;
    private final OidcSession providersSession;

    CompanySignInResource(
            CompanySignIn companySignIn, Callers callers, SecurityIdentity identity, OidcSession providersSession) {
        this.companySignIn = companySignIn;
        this.callers = callers;
        this.identity = identity;
        this.providersSession = providersSession;
    }

    @GET
    @Authenticated
    @Operation(
            summary = "Sign in with the company account",
            description = "For browsers: leads to the identity provider and back. The roles are those of the groups at"
                    + " sign-in, until the session ends.")
    @APIResponse(responseCode = "302", description = "to the identity provider")
    @APIResponse(responseCode = "303", description = "signed in, or refused with a word for the sign-in page")
    @APIResponse(responseCode = "401", description = "what the identity provider answered cannot be believed")
    @APIResponse(responseCode = "404", description = "no identity provider is set up")
    public Response signIn(
            @QueryParam("next") @Nullable String next, @CookieParam(SessionCookie.NAME) @Nullable String brought) {
        if (!(identity.getPrincipal() instanceof JsonWebToken idToken)) {
            throw new NotAuthenticatedException("Sign in with the identity provider first.");
        }
        CompanySignIn.Outcome outcome = companySignIn.open(
                new CompanyPerson(
                        idToken.getIssuer(),
                        idToken.getSubject(),
                        idToken.getName(),
                        idToken.getClaim(NAME),
                        identity.getRoles()),
                callers.current().from(),
                brought);
        // The provider's own session is not kept: the next sign-in asks it again, and reads the groups anew.
        providersSession.logout().await().indefinitely();
        if (outcome instanceof CompanySignIn.SignedIn in) {
            return Response.seeOther(URI.create(ownPage(next)))
                    .cookie(SessionCookie.of(in.secret()).build())
                    .build();
        }
        return Response.seeOther(URI.create(SIGN_IN_PAGE + ((CompanySignIn.Refused) outcome).word()))
                .build();
    }

    private static String ownPage(@Nullable String next) {
        if (next == null || !OWN_PAGE.matcher(next).matches()) {
            return FIRST_PAGE;
        }
        try {
            return URI.create(next).toString();
        } catch (IllegalArgumentException e) {
            return FIRST_PAGE;
        }
    }
}
