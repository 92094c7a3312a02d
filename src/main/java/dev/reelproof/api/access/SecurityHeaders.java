package dev.reelproof.api.access;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.MultiMap;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import java.util.Map;

/** Tells browsers, with every answer, what a page of ours never does. */
@Singleton
class SecurityHeaders {
    private static final int BEFORE_ALL_ELSE = 10_000;

    private static final Map<String, String> ALWAYS = Map.of(
            "Content-Security-Policy",
            "default-src 'self'; img-src 'self' data:; object-src 'none'; base-uri 'none'; frame-ancestors 'none';"
                    + " form-action 'self'",
            "X-Content-Type-Options",
            "nosniff",
            "Referrer-Policy",
            "same-origin",
            "X-Frame-Options",
            "DENY",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Permissions-Policy",
            "camera=(), microphone=(), geolocation=()");

    private static final List<String> NEVER_KEPT =
            List.of("/api/v1/session", "/api/v1/set-up", "/api/v1/accounts", "/api/v1/tokens");

    void register(@Observes Filters filters) {
        filters.register(SecurityHeaders::add, BEFORE_ALL_ELSE);
    }

    private static void add(RoutingContext context) {
        MultiMap headers = context.response().headers();
        ALWAYS.forEach(headers::set);
        if ("https".equals(context.request().scheme())) {
            headers.set("Strict-Transport-Security", "max-age=31536000");
        }
        String path = context.normalizedPath();
        if (NEVER_KEPT.stream().anyMatch(secret -> path.equals(secret) || path.startsWith(secret + "/"))) {
            headers.set("Cache-Control", "no-store");
        }
        context.next();
    }
}
