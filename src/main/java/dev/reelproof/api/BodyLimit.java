package dev.reelproof.api;

import dev.reelproof.api.access.SessionCookie;
import io.quarkus.runtime.configuration.MemorySize;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.core.json.Json;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import io.vertx.ext.web.handler.BodyHandler;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Answers a body over the limit with a problem document; the server itself would answer with nothing but a status. */
@Singleton
class BodyLimit {
    private static final int BEFORE_THE_SERVERS_OWN = 1000;
    private static final int FIRST = Integer.MIN_VALUE;
    private static final int TOO_LARGE = 413;
    private static final int MOST_UNWANTED_BODIES = 4;
    private static final String ANY_TYPE = "application/octet-stream";

    private static final Set<HttpMethod> WITH_A_BODY = Set.of(HttpMethod.POST, HttpMethod.PUT, HttpMethod.PATCH);

    /** A request without token or session may send a sign-in and not much more: bodies are kept in memory. */
    private static final long BEFORE_SIGN_IN = 64L * 1024;

    /** Anyone may send the PDF of a certificate here to have it verified. */
    private static final String VERIFICATION = "/api/v1/certificates/verification";

    private static final long LONGEST_CERTIFICATE = 16L * 1024 * 1024;
    private static final int MOST_CERTIFICATES = 8;
    private static final int TOO_MANY = 429;

    private final AtomicInteger certificates = new AtomicInteger();
    private final long limit;
    private final long limitBeforeSignIn;
    private final long limitOfCertificates;
    private final BodyHandler collector;
    private final BodyHandler collectorBeforeSignIn;
    private final BodyHandler collectorOfCertificates;

    BodyLimit(@ConfigProperty(name = "quarkus.http.limits.max-body-size") MemorySize configured) {
        limit = configured.asLongValue();
        limitBeforeSignIn = Math.min(limit, BEFORE_SIGN_IN);
        limitOfCertificates = Math.min(limit, LONGEST_CERTIFICATE);
        collectorOfCertificates = collector(limitOfCertificates);
        collector = collector(limit);
        collectorBeforeSignIn = collector(limitBeforeSignIn);
    }

    private static BodyHandler collector(long limit) {
        return BodyHandler.create(false).setBodyLimit(limit);
    }

    void register(@Observes Filters filters) {
        filters.register(this::check, BEFORE_THE_SERVERS_OWN);
    }

    void register(@Observes Router router) {
        router.route().order(FIRST).failureHandler(this::answer);
    }

    private void check(RoutingContext context) {
        HttpServerRequest request = context.request();
        String stated = request.getHeader(HttpHeaders.CONTENT_LENGTH);
        if (isCertificate(request) && !admit(context)) {
            return;
        }
        if (stated != null && Long.parseLong(stated) > limit(request)) {
            refuse(context);
        } else if (stated == null && WITH_A_BODY.contains(request.method())) {
            collect(context);
        } else {
            context.next();
        }
    }

    private static boolean isCertificate(HttpServerRequest request) {
        return HttpMethod.POST.equals(request.method()) && VERIFICATION.equals(request.path());
    }

    /** Lets so many files of strangers in at the same time, and turns the next away before it is read. */
    private boolean admit(RoutingContext context) {
        if (certificates.incrementAndGet() > MOST_CERTIFICATES) {
            certificates.decrementAndGet();
            answer(
                    context.response(),
                    Problem.at(
                            "body",
                            TOO_MANY,
                            "Too many files at once",
                            "Others have their files verified; send it again in a moment."));
            context.request().resume();
            return false;
        }
        AtomicBoolean isIn = new AtomicBoolean(true);
        context.addEndHandler(end -> {
            if (isIn.getAndSet(false)) {
                certificates.decrementAndGet();
            }
        });
        return true;
    }

    private long limit(HttpServerRequest request) {
        if (isCertificate(request)) {
            return limitOfCertificates;
        }
        return bringsCredential(request) ? limit : limitBeforeSignIn;
    }

    private static boolean bringsCredential(HttpServerRequest request) {
        return request.getHeader(HttpHeaders.AUTHORIZATION) != null || request.getCookie(SessionCookie.NAME) != null;
    }

    /** Collects a body that does not state its size, which is found too large only while it is read. */
    private void collect(RoutingContext context) {
        HttpServerRequest request = context.request();
        BodyHandler handler = isCertificate(request)
                ? collectorOfCertificates
                : bringsCredential(request) ? collector : collectorBeforeSignIn;
        // The handler takes the parts out of what says that it is a form; our resources read its bytes themselves.
        // Where there is no body
        // the request goes on at once, so that no other type is touched.
        String type = request.getHeader(HttpHeaders.CONTENT_TYPE);
        if (type != null && isForm(type.toLowerCase(Locale.ROOT))) {
            request.headers().set(HttpHeaders.CONTENT_TYPE, ANY_TYPE);
            handler.handle(context);
            request.headers().set(HttpHeaders.CONTENT_TYPE, type);
        } else {
            handler.handle(context);
        }
        request.resume();
    }

    private static boolean isForm(String type) {
        return type.startsWith("multipart/") || type.startsWith("application/x-www-form-urlencoded");
    }

    private void answer(RoutingContext context) {
        if (context.statusCode() == TOO_LARGE && !context.response().ended()) {
            refuse(context);
        } else {
            context.next();
        }
    }

    /** Answers, and reads on for a while, since a client that is cut off while it sends does not see the answer. */
    private void refuse(RoutingContext context) {
        HttpServerRequest request = context.request();
        long most = limit(request);
        AtomicLong unwanted = new AtomicLong();
        request.handler(chunk -> {
            if (unwanted.addAndGet(chunk.length()) > MOST_UNWANTED_BODIES * most) {
                request.connection().close();
            }
        });
        request.endHandler(end -> {});
        Problem problem = Problem.at(
                "body", TOO_LARGE, Problems.title(TOO_LARGE), "At most " + most + " bytes are taken in one request.");
        answer(context.response(), problem);
        request.resume();
    }

    private static void answer(HttpServerResponse response, Problem problem) {
        response.setStatusCode(problem.status())
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .end(Json.encode(problem));
    }
}
