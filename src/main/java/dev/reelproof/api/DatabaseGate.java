package dev.reelproof.api;

import dev.reelproof.app.WatchDatabase;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.Json;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;

/** Refuses what asks the database while it does not answer, before a body is read or a worker waits. */
@Singleton
class DatabaseGate {
    /** Before a body is looked at. */
    private static final int BEFORE_ALL = 2000;

    private static final String ROUTES = "/api/";

    private final WatchDatabase watch;

    DatabaseGate(WatchDatabase watch) {
        this.watch = watch;
    }

    void register(@Observes Filters filters) {
        filters.register(this::check, BEFORE_ALL);
    }

    private void check(RoutingContext context) {
        if (watch.answers() || !context.normalizedPath().startsWith(ROUTES)) {
            context.next();
            return;
        }
        context.response()
                .setStatusCode(Problems.UNAVAILABLE)
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .putHeader(HttpHeaders.RETRY_AFTER, Long.toString(WatchDatabase.TRY_AGAIN_AFTER.toSeconds()))
                .putHeader(HttpHeaders.CONNECTION, "close")
                .end(Json.encode(Problems.unavailable(context.normalizedPath())));
    }
}
