package dev.reelproof.api;

import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.json.JsonArray;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Answers a body over the limit with a problem document; the server itself would answer with nothing but a status. */
@Singleton
class BodyLimit {
    private static final int BEFORE_THE_SERVERS_OWN = 1000;
    private static final int TOO_LARGE = 413;

    private final MemorySize limit;

    BodyLimit(@ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize limit) {
        this.limit = limit;
    }

    void filter(@Observes Filters filters) {
        filters.register(this::refuseStatedSize, BEFORE_THE_SERVERS_OWN);
    }

    /** A body that does not state its size is found too large only while it is read. */
    void atFailure(@Observes Router router) {
        router.errorHandler(TOO_LARGE, this::refuse);
    }

    private void refuseStatedSize(RoutingContext context) {
        String stated = context.request().getHeader(HttpHeaders.CONTENT_LENGTH);
        if (stated != null && Long.parseLong(stated) > limit.asLongValue()) {
            refuse(context);
        } else {
            context.next();
        }
    }

    private void refuse(RoutingContext context) {
        HttpServerResponse response = context.response();
        if (response.ended()) {
            return;
        }
        response.setStatusCode(TOO_LARGE)
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                // The rest of the body is not wanted.
                .putHeader(HttpHeaders.CONNECTION, "close")
                .end(new JsonObject()
                        .put("title", Problems.title(TOO_LARGE))
                        .put("status", TOO_LARGE)
                        .put("detail", "At most " + limit.asLongValue() + " bytes are taken in one request.")
                        .put("errors", new JsonArray())
                        .encode());
    }
}
