package dev.reelproof.api.access;

import dev.reelproof.access.Callers;
import dev.reelproof.app.Plants;
import dev.reelproof.app.access.CompanySignIn;
import dev.reelproof.app.access.CompanySignIn.Vouched;
import dev.reelproof.store.access.Sessions;
import io.quarkus.oidc.OidcSession;
import io.quarkus.security.Authenticated;
import io.quarkus.security.UnauthorizedException;
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

/** Signing in with the company's identity provider: what it vouches for becomes a session of ours. */
@Path(CompanySignIn.PATH)
@Tag(name = "Accounts and sign-in")
public class CompanySignInResource {
    // OpenID Connect Core 1.0, 5.1 Standard Claims (from memory).
    private static final String NAME = "name";

    private static final String FIRST_PAGE = "/";
    private static final String SIGN_IN_PAGE = "/sign-in.html?provider=";

    // A path of ours: two slashes, or a slash and a backslash, would begin the name of another host.
    private static final Pattern OWN_PAGE = Pattern.compile("/(?![/\\\\])[^\\\\\\p{Cntrl}]*");

    private final CompanySignIn companySignIn;
    private final Callers callers;
    private final Plants plants;
    private final SecurityIdentity identity;
    private final OidcSession providersSession;

    CompanySignInResource(
            CompanySignIn companySignIn,
            Callers callers,
            Plants plants,
            SecurityIdentity identity,
            OidcSession providersSession) {
        this.companySignIn = companySignIn;
        this.callers = callers;
        this.plants = plants;
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
    public Response signIn(@QueryParam("next") String next, @CookieParam(Sessions.COOKIE) String brought) {
        if (!(identity.getPrincipal() instanceof JsonWebToken idToken)) {
            throw new UnauthorizedException();
        }
        CompanySignIn.Outcome outcome = companySignIn.open(
                plants.home(),
                new Vouched(
                        idToken.getIssuer(),
                        idToken.getSubject(),
                        idToken.getName(),
                        idToken.getClaim(NAME),
                        identity.getRoles()),
                callers.current().from(),
                brought);
        // The provider's own session is not kept: the next sign-in asks it again, and reads the groups anew.
        providersSession.logout().await().indefinitely();
        if (outcome instanceof CompanySignIn.In in) {
            return Response.seeOther(URI.create(ownPage(next)))
                    .cookie(SessionResource.cookie(in.secret()).build())
                    .build();
        }
        return Response.seeOther(URI.create(SIGN_IN_PAGE + ((CompanySignIn.Refused) outcome).word()))
                .build();
    }

    private static String ownPage(String next) {
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
