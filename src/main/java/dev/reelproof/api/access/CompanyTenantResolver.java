package dev.reelproof.api.access;

import io.quarkus.oidc.TenantResolver;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import org.jspecify.annotations.Nullable;

/**
 * Asks the company's identity provider at one address alone. Everywhere else its cookies and tokens count for nothing, so that a
 * session of ours, with its limits and its guard against forged requests, is the one way to sign in.
 */
@ApplicationScoped
class CompanyTenantResolver implements TenantResolver {
    private static final @Nullable String AS_CONFIGURED = null;
    private static final String NOWHERE = "nowhere";

    @Override
    public @Nullable String resolve(RoutingContext context) {
        return CompanySignInResource.PATH.equals(context.request().path()) ? AS_CONFIGURED : NOWHERE;
    }
}
