package dev.reelproof.api.access;

import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Role;
import io.quarkus.arc.Arc;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Reads who is calling from the identity that the request was given. */
@ApplicationScoped
class CallerIdentity {
    /** The identity's attribute that says what kind of caller it is, in the kind's word; a person when it is absent. */
    static final String KIND = "reelproof.kind";

    /** The identity's attribute that names the one plant of the caller; every plant when it is absent. */
    static final String PLANT = "reelproof.plant";

    /** The identity's attribute with the digest of its session's secret; absent without a session. */
    static final String SESSION = "reelproof.session";

    /** The identity's attribute with what its changes must carry; absent without a session. */
    static final String CSRF = "reelproof.csrf";

    /** The identity's attribute that says how others read of the caller. */
    static final String DISPLAY_NAME = "reelproof.display-name";

    /** The identity's attribute that says whether it is one of the demo's accounts, or its token. */
    static final String DEMO = "reelproof.demo";

    private final SecurityIdentity identity;
    private final CurrentVertxRequest request;

    CallerIdentity(SecurityIdentity identity, CurrentVertxRequest request) {
        this.identity = identity;
        this.request = request;
    }

    /** The callers that use cases and store ask. */
    @Produces
    @Singleton
    static Callers callers(CallerIdentity identity) {
        return new Callers(identity::caller);
    }

    /** Who is calling; the service itself when no request is being answered. */
    Caller caller() {
        if (!Arc.container().requestContext().isActive() || request.getCurrent() == null) {
            return Caller.SERVICE;
        }
        String from = from(request.getCurrent());
        if (identity.isAnonymous()) {
            return Caller.nobody(from);
        }
        return new Caller(
                Caller.Kind.TOKEN.word().equals(identity.getAttribute(KIND)) ? Caller.Kind.TOKEN : Caller.Kind.PERSON,
                identity.getPrincipal().getName(),
                identity.getAttribute(PLANT),
                identity.getRoles().stream()
                        .map(Role::named)
                        .flatMap(Optional::stream)
                        .collect(Collectors.toSet()),
                from);
    }

    private static @Nullable String from(RoutingContext context) {
        return context.request().remoteAddress() == null
                ? null
                : context.request().remoteAddress().hostAddress();
    }

    /** How others read of who signed in. */
    String displayName() {
        String displayName = identity.getAttribute(DISPLAY_NAME);
        return displayName == null ? identity.getPrincipal().getName() : displayName;
    }

    /** Whether it is one of the demo's accounts, or its token. */
    boolean isDemo() {
        return Boolean.TRUE.equals(identity.getAttribute(DEMO));
    }

    /** What changes must carry in the header X-CSRF-Token; absent without a session. */
    @Nullable
    String csrf() {
        return identity.getAttribute(CSRF);
    }

    /** The digest of the session's secret; absent without a session. */
    @Nullable
    String session() {
        return identity.getAttribute(SESSION);
    }
}
