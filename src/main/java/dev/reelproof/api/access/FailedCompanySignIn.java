package dev.reelproof.api.access;

import dev.reelproof.api.Problem;
import dev.reelproof.api.Problems;
import dev.reelproof.app.access.CompanySettings;
import io.quarkus.security.AuthenticationCompletionException;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.Json;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import org.jboss.logging.Logger;

/**
 * Answers with a problem document when no identity provider is set up, or when its answer cannot be believed; both happen before any
 * resource.
 */
@Singleton
class FailedCompanySignIn {
    private static final Logger LOG = Logger.getLogger(FailedCompanySignIn.class);
    private static final int NOT_FOUND = 404;
    // The headers of every answer are set before; the server checks permissions after, at 200 and below.
    private static final int BEFORE_PERMISSIONS = 500;
    private static final int BEFORE_THE_SERVERS_OWN = Integer.MIN_VALUE;

    private final boolean isOffered;

    FailedCompanySignIn(CompanySettings settings) {
        isOffered = settings.oidc().on();
    }

    void register(@Observes Router router) {
        router.route(CompanySignInResource.PATH)
                .order(BEFORE_THE_SERVERS_OWN)
                .failureHandler(FailedCompanySignIn::answer);
    }

    void register(@Observes Filters filters) {
        if (!isOffered) {
            filters.register(FailedCompanySignIn::answerThatThereIsNone, BEFORE_PERMISSIONS);
        }
    }

    private static void answerThatThereIsNone(RoutingContext context) {
        if (!context.normalizedPath().equals(CompanySignInResource.PATH)) {
            context.next();
            return;
        }
        send(
                context,
                Problem.at(
                        CompanySignInResource.PATH,
                        NOT_FOUND,
                        Problems.title(NOT_FOUND),
                        "No identity provider is set up here; sign in with your name and password on /sign-in.html."));
    }

    private static void answer(RoutingContext context) {
        Throwable failure = context.failure();
        if (!(failure instanceof AuthenticationFailedException || failure instanceof AuthenticationCompletionException)
                || context.response().ended()) {
            // A redirection is no failure, and what else went wrong is the server's to answer.
            context.next();
            return;
        }
        // Messages of the failure quote the token: only what kind it is may be told.
        LOG.warnf(
                "A sign-in with the identity provider failed (%s): its answer was refused, or it did not answer. Check"
                        + " its address, the client and its secret, and the clocks of both.",
                root(failure).getClass().getSimpleName());
        send(
                context,
                Problem.at(
                        CompanySignInResource.PATH,
                        Problems.NOT_SIGNED_IN,
                        "Nobody is signed in",
                        "What the identity provider answered cannot be believed; go back to /sign-in.html and try"
                                + " again."));
    }

    private static void send(RoutingContext context, Problem problem) {
        context.response()
                .setStatusCode(problem.status())
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .end(Json.encode(problem));
    }

    private static Throwable root(Throwable failure) {
        Throwable root = failure;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        return root;
    }
}
