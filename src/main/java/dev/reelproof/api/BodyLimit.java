package dev.reelproof.api;

import dev.reelproof.store.access.Sessions;
import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.json.JsonArray;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.impl.RoutingContextInternal;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Answers a body over the limit with a problem document; the server itself would answer with nothing but a status. */
@Singleton
class BodyLimit {
    private static final int BEFORE_THE_SERVERS_OWN = 1000;
    private static final int TOO_LARGE = 413;

    private static final int MOST_UNWANTED_BODIES = 4;

    private static final Set<HttpMethod> WITH_A_BODY = Set.of(HttpMethod.POST, HttpMethod.PUT, HttpMethod.PATCH);

    /** Who holds out nothing to be let in by may send a sign-in and not much more: bodies are kept in memory. */
    private static final long BEFORE_SIGN_IN = 64L * 1024;

    private final long limit;

    BodyLimit(@ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize limit) {
        this.limit = limit.asLongValue();
    }

    void filter(@Observes Filters filters) {
        filters.register(this::check, BEFORE_THE_SERVERS_OWN);
    }

    private void check(RoutingContext context) {
        HttpServerRequest request = context.request();
        String stated = request.getHeader(HttpHeaders.CONTENT_LENGTH);
        long limit = limit(request);
        if (stated != null && Long.parseLong(stated) > limit) {
            refuse(context, limit);
        } else if (stated == null && WITH_A_BODY.contains(request.method())) {
            collect(context, limit);
        } else {
            context.next();
        }
    }

    private long limit(HttpServerRequest request) {
        boolean holdsOutNothing =
                request.getHeader(HttpHeaders.AUTHORIZATION) == null && request.getCookie(Sessions.COOKIE) == null;
        return holdsOutNothing ? Math.min(limit, BEFORE_SIGN_IN) : limit;
    }

    /** A body that does not state its size is found too large only while it is read. */
    private void collect(RoutingContext context, long limit) {
        Buffer body = Buffer.buffer();
        HttpServerRequest request = context.request();
        request.handler(chunk -> {
            if (body.length() + chunk.length() > limit) {
                refuse(context, limit);
            } else {
                body.appendBuffer(chunk);
            }
        });
        request.endHandler(end -> {
            if (!context.response().ended()) {
                ((RoutingContextInternal) context).setBody(body);
                context.next();
            }
        });
        request.resume();
    }

    /** Answers, and reads on for a while, since a client that is cut off while it sends does not see the answer. */
    private void refuse(RoutingContext context, long limit) {
        HttpServerRequest request = context.request();
        AtomicLong unwanted = new AtomicLong();
        request.handler(chunk -> {
            if (unwanted.addAndGet(chunk.length()) > MOST_UNWANTED_BODIES * limit) {
                request.connection().close();
            }
        });
        request.endHandler(end -> {});
        String detail = "At most " + limit + " bytes are taken in one request.";
        context.response()
                .setStatusCode(TOO_LARGE)
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .end(new JsonObject()
                        .put("title", Problems.title(TOO_LARGE))
                        .put("status", TOO_LARGE)
                        .put("detail", detail)
                        .put(
                                "errors",
                                new JsonArray()
                                        .add(new JsonObject()
                                                .put("where", "body")
                                                .put("message", detail)))
                        .encode());
        request.resume();
    }
}
