package dev.reelproof.api;

import dev.reelproof.intake.Fault;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A problem document (RFC 9457). */
@Schema(name = "Problem", description = "Problem document, RFC 9457, served as application/problem+json")
public record Problem(String title, int status, String detail, List<Fault> errors) {
    public static final String MEDIA_TYPE = "application/problem+json";

    /** A problem with one place: the request's address, a header or the body. */
    public static Problem at(String where, int status, String title, String detail) {
        return new Problem(title, status, detail, List.of(new Fault(where, detail)));
    }

    public Response response() {
        return Response.status(status).type(MEDIA_TYPE).entity(this).build();
    }
}
