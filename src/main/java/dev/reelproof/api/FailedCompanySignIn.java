package dev.reelproof.api;

import dev.reelproof.access.CompanySignIn;
import io.quarkus.security.AuthenticationCompletionException;
import io.quarkus.security.AuthenticationFailedException;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import org.jboss.logging.Logger;

/** Answers with a problem document when the identity provider's answer cannot be believed; that happens before any resource. */
@Singleton
class FailedCompanySignIn {
    private static final Logger LOG = Logger.getLogger(FailedCompanySignIn.class);
    private static final int BEFORE_THE_SERVERS_OWN = Integer.MIN_VALUE;

    void register(@Observes Router router) {
        router.route(CompanySignIn.PATH).order(BEFORE_THE_SERVERS_OWN).failureHandler(FailedCompanySignIn::answer);
    }

    private static void answer(RoutingContext context) {
        Throwable failure = context.failure();
        boolean isRefused = failure instanceof AuthenticationFailedException
                || failure instanceof AuthenticationCompletionException;
        if (!isRefused || context.response().ended()) {
            // A redirection is no failure, and what else went wrong is the server's to answer.
            context.next();
            return;
        }
        // Messages of the failure quote the token: only what kind it is may be told.
        LOG.warnf(
                "A sign-in with the identity provider failed (%s): its answer was refused, or it did not answer. Check"
                        + " its address, the client and its secret, and the clocks of both.",
                root(failure).getClass().getSimpleName());
        Problem problem = Problem.at(
                CompanySignIn.PATH,
                Problems.NOT_SIGNED_IN,
                "Nobody is signed in",
                "What the identity provider answered cannot be believed; go back to /sign-in.html and try again.");
        context.response()
                .setStatusCode(problem.status())
                .putHeader(HttpHeaders.CONTENT_TYPE, Problem.MEDIA_TYPE)
                .end(JsonObject.mapFrom(problem).encode());
    }

    private static Throwable root(Throwable failure) {
        Throwable root = failure;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        return root;
    }
}
