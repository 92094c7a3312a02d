package dev.reelproof.access;

import io.quarkus.arc.Arc;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import java.util.stream.Collectors;

/** Tells who is calling, from the identity that the request was given. */
@ApplicationScoped
public class Callers {
    /** The identity's attribute that says what kind of caller it is, in the kind's word; a person when it is absent. */
    public static final String KIND = "reelproof.kind";

    /** The identity's attribute that names the one plant of the caller; every plant when it is absent. */
    public static final String PLANT = "reelproof.plant";

    /** The identity's attribute with the digest of its session's secret; absent without a session. */
    public static final String SESSION = "reelproof.session";

    /** The identity's attribute with what its changes must carry; absent without a session. */
    public static final String CSRF = "reelproof.csrf";

    public static final String DISPLAY_NAME = "reelproof.display-name";
    public static final String DEMO = "reelproof.demo";

    private final SecurityIdentity identity;
    private final CurrentVertxRequest request;

    Callers(SecurityIdentity identity, CurrentVertxRequest request) {
        this.identity = identity;
        this.request = request;
    }

    /** Who is calling; the service itself when no request is being answered. */
    public Caller current() {
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

    private static String from(RoutingContext context) {
        return context.request().remoteAddress() == null
                ? null
                : context.request().remoteAddress().hostAddress();
    }

    /**
     * What else there is to know of who signed in.
     *
     * @param displayName how others read of the caller
     * @param demo whether it is one of the demo's accounts or its token
     * @param csrf what changes must carry in the header X-CSRF-Token; null without a session
     * @param session the digest of the session's secret; null without a session
     */
    public record Visit(String displayName, boolean demo, String csrf, String session) {
        @Override
        public String toString() {
            return displayName;
        }
    }

    /** What else there is to know of who signed in. */
    public Visit visit() {
        String displayName = identity.getAttribute(DISPLAY_NAME);
        return new Visit(
                displayName == null ? identity.getPrincipal().getName() : displayName,
                Boolean.TRUE.equals(identity.getAttribute(DEMO)),
                identity.getAttribute(CSRF),
                identity.getAttribute(SESSION));
    }
}
