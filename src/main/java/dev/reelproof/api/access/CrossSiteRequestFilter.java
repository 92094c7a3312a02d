package dev.reelproof.api.access;

import dev.reelproof.access.PermissionDeniedException;
import dev.reelproof.access.Secrets;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Refuses requests that another site's page made a browser send: a change by cookie must carry the session's own secret in a
 * header, which no other site can read.
 */
class CrossSiteRequestFilter {
    /** The header that a page of ours sends with every change. */
    static final String HEADER = "X-CSRF-Token";

    private static final Set<String> CHANGE_NOTHING = Set.of("GET", "HEAD", "OPTIONS");

    private final SecurityIdentity identity;

    CrossSiteRequestFilter(SecurityIdentity identity) {
        this.identity = identity;
    }

    @ServerRequestFilter
    void check(ContainerRequestContext request, ResourceInfo resource) {
        // What is open to everybody does nothing in the name of a session.
        if (CHANGE_NOTHING.contains(request.getMethod())
                || resource.getResourceMethod().isAnnotationPresent(PermitAll.class)) {
            return;
        }
        String expected = identity.getAttribute(CallerIdentity.CSRF);
        String sent = request.getHeaderString(HEADER);
        if (expected != null && (sent == null || !Secrets.same(expected, sent))) {
            throw new PermissionDeniedException("The header " + HEADER
                    + " is missing or not this session's; send the value of 'csrf' from GET /api/v1/session.");
        }
    }
}
