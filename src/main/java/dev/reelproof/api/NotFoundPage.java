package dev.reelproof.api;

import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** What a person sees who opens an address at which there is nothing. */
final class NotFoundPage {
    private static final String FILE = "/META-INF/resources/not-found.html";
    private static final String UTF_8 = ";charset=UTF-8";

    private NotFoundPage() {}

    /** Whether a browser asks, for a page to show: a client of the API names no HTML among what it takes. */
    static boolean isWantedBy(HttpHeaders request) {
        return request.getAcceptableMediaTypes().stream()
                .anyMatch(type -> MediaType.TEXT_HTML_TYPE.getType().equals(type.getType())
                        && MediaType.TEXT_HTML_TYPE.getSubtype().equals(type.getSubtype()));
    }

    static Response response() {
        try (InputStream in = NotFoundPage.class.getResourceAsStream(FILE)) {
            return Response.status(Response.Status.NOT_FOUND)
                    .type(MediaType.TEXT_HTML + UTF_8)
                    .entity(in.readAllBytes())
                    .build();
        } catch (IOException e) {
            throw new UncheckedIOException(FILE + " cannot be read", e);
        }
    }
}
