package dev.reelproof.api.page;

import io.quarkus.qute.Engine;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpHeaders;
import io.vertx.core.http.HttpMethod;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * Serves the frames of the pages, to everybody: they hold nothing of anybody's data.
 *
 * <p>A frame is the same for each request, so it is filled once. A route of the API would refuse what a page's own address may
 * carry behind a question mark, such as a certificate's number.
 */
@Singleton
public class Pages {
    private static final String FIRST = "index";
    private static final List<String> NAMES =
            List.of(FIRST, "accounts", "approvals", "order", "password", "set-up", "sign-in", "verify");
    private static final String HTML = "text/html;charset=UTF-8";

    /** Asked again each time: a frame names the modules that it goes with, and both change with the version. */
    private static final String ASK_AGAIN = "no-cache";

    private final Engine templates;
    private final String version;

    Pages(Engine templates, @ConfigProperty(name = "quarkus.application.version") String version) {
        this.templates = templates;
        this.version = version;
    }

    void serve(@Observes Router router) {
        for (String name : NAMES) {
            Buffer frame = Buffer.buffer(filled("pages/" + name));
            serve(router, "/" + name + ".html", frame);
            if (name.equals(FIRST)) {
                serve(router, "/", frame);
            }
        }
    }

    private static void serve(Router router, String address, Buffer frame) {
        router.route(address).method(HttpMethod.GET).method(HttpMethod.HEAD).handler(request -> answer(request, frame));
    }

    private static void answer(RoutingContext request, Buffer frame) {
        request.response()
                .putHeader(HttpHeaders.CONTENT_TYPE, HTML)
                .putHeader(HttpHeaders.CACHE_CONTROL, ASK_AGAIN)
                .end(frame);
    }

    /** The page that says that an address leads nowhere, for whoever answers such a request to a browser. */
    public String notFound() {
        return filled("not-found");
    }

    private String filled(String template) {
        return templates.getTemplate(template).data("version", version).render();
    }
}
