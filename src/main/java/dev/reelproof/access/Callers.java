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
}
