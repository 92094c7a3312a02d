package dev.reelproof.api;

import dev.reelproof.access.ApprovalConflictException;
import dev.reelproof.access.LastAdministratorException;
import dev.reelproof.access.NotAuthenticatedException;
import dev.reelproof.access.PermissionDeniedException;
import dev.reelproof.api.page.Pages;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.WatchDatabase;
import dev.reelproof.app.certificate.CannotBeSignedException;
import dev.reelproof.app.hold.HeldException;
import dev.reelproof.app.lot.LoadBrokeOffException;
import dev.reelproof.app.order.NotAllCertifiedException;
import dev.reelproof.intake.Fault;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.record.concession.ConcessionRefusedException;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.jboss.resteasy.reactive.server.SimpleResourceInfo;
import org.jspecify.annotations.Nullable;

/** Turns what went wrong into problem documents. */
public class Problems {
    private static final Logger LOG = Logger.getLogger(Problems.class);
    private static final int BAD_REQUEST = 400;
    public static final int NOT_SIGNED_IN = 401;
    private static final int FORBIDDEN = 403;
    private static final int NOT_FOUND = 404;
    private static final int NOT_ALLOWED = 405;
    private static final int NOT_ACCEPTABLE = 406;
    private static final int CONFLICT = 409;
    private static final int TOO_LARGE = 413;
    private static final int WRONG_MEDIA_TYPE = 415;
    private static final int TOO_MANY = 429;
    private static final long ALMOST_A_SECOND = 999;
    private static final int UNPROCESSABLE = 422;
    private static final int SERVER_ERROR = 500;
    static final int UNAVAILABLE = 503;
    private static final int OUT_OF_MEMORY = 75;
    private static final String HTML = MediaType.TEXT_HTML + ";charset=UTF-8";

    private final Pages pages;

    Problems(Pages pages) {
        this.pages = pages;
    }

    @ServerExceptionMapper
    Response cannotBeTaken(IntakeException e) {
        return e.kind() == IntakeException.Kind.MALFORMED
                ? new Problem("What was sent cannot be read", BAD_REQUEST, said(e), e.faults()).response()
                : new Problem("What was sent cannot be taken", UNPROCESSABLE, said(e), e.faults()).response();
    }

    @ServerExceptionMapper
    Response conflict(ConflictException e, UriInfo request) {
        return conflict(request, said(e));
    }

    @ServerExceptionMapper
    Response held(HeldException e) {
        List<Fault> faults = e.holds().stream()
                .map(hold -> new Fault("/api/v1/holds/" + hold.id(), hold.inWords()))
                .toList();
        return new Problem("The reel is on hold", CONFLICT, said(e), faults).response();
    }

    @ServerExceptionMapper
    Response notAllCertified(NotAllCertifiedException e) {
        List<Fault> faults =
                e.reels().stream().map(one -> new Fault(one.reel(), one.why())).toList();
        return new Problem("Reels have no current certificate", CONFLICT, said(e), faults).response();
    }

    @ServerExceptionMapper
    Response cannotBeSigned(CannotBeSignedException e, UriInfo request) {
        LOG.error("a certificate cannot be signed: " + e.getMessage());
        return Problem.at(request.getPath(), UNAVAILABLE, "Nothing can be signed at present", said(e))
                .response();
    }

    @ServerExceptionMapper
    Response nothingThere(NothingThereException e, UriInfo request) {
        return Problem.at(request.getPath(), NOT_FOUND, title(NOT_FOUND), said(e))
                .response();
    }

    @ServerExceptionMapper
    Response notAuthenticated(NotAuthenticatedException e, UriInfo request) {
        return notSignedIn(request, said(e));
    }

    /** The framework's own: nobody is signed in where a resource says that somebody must be. */
    @ServerExceptionMapper
    Response notAuthenticated(UnauthorizedException e, UriInfo request) {
        return notSignedIn(request, "Sign in first, or send an API token as 'Authorization: Bearer …'.");
    }

    private static Response notSignedIn(UriInfo request, String detail) {
        return Problem.at(request.getPath(), NOT_SIGNED_IN, "Nobody is signed in", detail)
                .response();
    }

    @ServerExceptionMapper
    Response wrongToken(AuthenticationFailedException e, UriInfo request) {
        return Problem.at(
                        HttpHeaders.AUTHORIZATION,
                        NOT_SIGNED_IN,
                        "Nobody is signed in",
                        "The API token is unknown, revoked or expired; an administrator makes a new one.")
                .response();
    }

    /** Too many attempts; they may go on after a while. */
    public static Response tooManyAttempts(String path, Duration left) {
        long seconds = left.plusMillis(ALMOST_A_SECOND).toSeconds();
        return Response.fromResponse(Problem.at(
                                path,
                                TOO_MANY,
                                "Too many attempts",
                                "Too many attempts were wrong; try again in " + seconds + " seconds.")
                        .response())
                .header(HttpHeaders.RETRY_AFTER, seconds)
                .build();
    }

    @ServerExceptionMapper
    Response lastAdministrator(LastAdministratorException e, UriInfo request) {
        return conflict(request, said(e));
    }

    @ServerExceptionMapper
    Response approvalConflict(ApprovalConflictException e, UriInfo request) {
        return conflict(request, said(e));
    }

    @ServerExceptionMapper
    Response concessionRefused(ConcessionRefusedException e, UriInfo request) {
        return conflict(request, said(e));
    }

    private static Response conflict(UriInfo request, String detail) {
        return Problem.at(request.getPath(), CONFLICT, "This cannot be done as things stand", detail)
                .response();
    }

    @ServerExceptionMapper
    Response permissionDenied(PermissionDeniedException e, UriInfo request) {
        return forbidden(request, said(e));
    }

    /** The framework's own: a resource does not say who may. */
    @ServerExceptionMapper
    Response forbidden(ForbiddenException e, UriInfo request) {
        return forbidden(request, Objects.requireNonNullElse(e.getMessage(), "Your roles do not allow this."));
    }

    private static Response forbidden(UriInfo request, String detail) {
        return Problem.at(request.getPath(), FORBIDDEN, "You may not do this", detail)
                .response();
    }

    @ServerExceptionMapper
    Response ofTheProtocol(WebApplicationException e, UriInfo request, HttpHeaders headers) {
        Response given = e.getResponse();
        int status = given.getStatus();
        if (status < BAD_REQUEST) {
            return given;
        }
        if (status == NOT_FOUND && isBrowser(headers)) {
            return Response.status(NOT_FOUND)
                    .type(HTML)
                    .entity(pages.notFound())
                    .build();
        }
        Response.ResponseBuilder answer =
                Response.fromResponse(Problem.at(where(status, request), status, title(status), detail(e, request))
                        .response());
        if (given.getHeaderString(HttpHeaders.ALLOW) != null) {
            answer.header(HttpHeaders.ALLOW, given.getHeaderString(HttpHeaders.ALLOW));
        }
        return answer.build();
    }

    /** Whether a page is wanted: a client of the API names no HTML among what it takes. */
    private static boolean isBrowser(HttpHeaders request) {
        return request.getAcceptableMediaTypes().stream()
                .anyMatch(type -> MediaType.TEXT_HTML_TYPE.getType().equals(type.getType())
                        && MediaType.TEXT_HTML_TYPE.getSubtype().equals(type.getSubtype()));
    }

    @ServerExceptionMapper
    Response brokeOff(LoadBrokeOffException e, UriInfo request) {
        LOG.error("a load of lots broke off", e);
        return Problem.at(request.getPath(), SERVER_ERROR, "The service failed", said(e))
                .response();
    }

    @ServerExceptionMapper
    Response unexpected(Throwable e, UriInfo request, @Nullable SimpleResourceInfo resource) {
        if (e instanceof OutOfMemoryError) {
            // Nothing can be relied on any more; whoever keeps the service running starts it again.
            Runtime.getRuntime().halt(OUT_OF_MEMORY);
        }
        if (WatchDatabase.isLost(e)) {
            LOG.warnf("the database could not be asked: %s", e.getMessage());
            return Response.fromResponse(unavailable(request.getPath()).response())
                    .header(HttpHeaders.RETRY_AFTER, WatchDatabase.TRY_AGAIN_AFTER.toSeconds())
                    .build();
        }
        // Not the address: it can hold the name of a person.
        LOG.error("failed: " + (resource == null ? "no route" : resource.getMethodName()), e);
        return Problem.at(
                        request.getPath(),
                        SERVER_ERROR,
                        "The service failed",
                        "Nothing of the request was kept. The service's log says what happened; send the request again"
                                + " when its cause is removed.")
                .response();
    }

    /** The database cannot be asked at the moment. */
    static Problem unavailable(String where) {
        return Problem.at(
                where,
                UNAVAILABLE,
                "The database does not answer",
                "The database does not answer at the moment, so that nothing can be kept or found. Try again in a few"
                        + " seconds; what was answered before is kept.");
    }

    /** What an exception of ours says: each is made with a sentence for who called. */
    private static String said(RuntimeException e) {
        return Objects.requireNonNull(e.getMessage(), "an exception of ours says what is wrong");
    }

    private static String where(int status, UriInfo request) {
        return switch (status) {
            case WRONG_MEDIA_TYPE -> HttpHeaders.CONTENT_TYPE;
            case NOT_ACCEPTABLE -> HttpHeaders.ACCEPT;
            case TOO_LARGE -> "body";
            default -> request.getPath();
        };
    }

    public static String title(int status) {
        return switch (status) {
            case NOT_FOUND -> "Not found";
            case NOT_ALLOWED -> "This method is not served here";
            case NOT_ACCEPTABLE -> "This media type is not served here";
            case TOO_LARGE -> "The request is too large";
            case WRONG_MEDIA_TYPE -> "This media type is not taken here";
            default -> status < SERVER_ERROR ? "The request cannot be answered" : "The service failed";
        };
    }

    private static String detail(WebApplicationException e, UriInfo request) {
        return switch (e.getResponse().getStatus()) {
            case NOT_FOUND -> "There is nothing at " + request.getPath() + "; /q/openapi lists what there is.";
            case NOT_ALLOWED -> "See the header Allow for the methods that " + request.getPath() + " serves.";
            case NOT_ACCEPTABLE -> "Ask for application/json.";
            case WRONG_MEDIA_TYPE -> request.getPath().endsWith("/lots/bulk")
                    ? "Send application/x-ndjson or text/csv."
                    : "Send application/json"
                            + (request.getPath().endsWith("/tests") ? " or multipart/form-data." : ".");
            case TOO_LARGE -> "Send less than the limit.";
            default -> title(e.getResponse().getStatus()) + ".";
        };
    }
}
