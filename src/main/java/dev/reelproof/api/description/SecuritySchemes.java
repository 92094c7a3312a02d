package dev.reelproof.api.description;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.List;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.security.SecurityRequirement;
import org.eclipse.microprofile.openapi.models.security.SecurityScheme;
import org.jboss.jandex.IndexView;
import org.jspecify.annotations.Nullable;

/**
 * Says how a caller shows who it is: by an API token, or, in a browser, by the cookie of a session. Each route that is not open
 * takes either.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD, priority = DescriptionOrder.SECURITY)
public class SecuritySchemes implements OASFilter {
    static final String TOKEN = "token";
    static final String SESSION = "session";

    /** Name of the session's cookie, as {@code store.access.Sessions} sets it; a test compares the two. */
    static final String COOKIE = "reelproof-session";

    private static final List<SecurityRequirement> TOKEN_OR_SESSION = List.of(
            OASFactory.createSecurityRequirement().addScheme(TOKEN),
            OASFactory.createSecurityRequirement().addScheme(SESSION));

    /** What a browser or an HTTP client sends by itself: nobody fills it in. */
    private static final List<String> SENT_BY_CLIENTS = List.of("Host", "Origin");

    private final OpenRoutes openRoutes;

    /** @param index the classes of the application */
    public SecuritySchemes(IndexView index) {
        openRoutes = new OpenRoutes(index);
    }

    @Override
    public void filterOpenAPI(OpenAPI openApi) {
        openApi.getPaths().getPathItems().forEach((path, item) -> item.getOperations()
                .forEach((method, operation) ->
                        operation.setSecurity(openRoutes.contains(method, path) ? List.of() : TOKEN_OR_SESSION)));
        openApi.getComponents().setSecuritySchemes(null);
        openApi.getComponents()
                .addSecurityScheme(
                        TOKEN,
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description("An API token of one role, made at /accounts.html"))
                .addSecurityScheme(
                        SESSION,
                        OASFactory.createSecurityScheme()
                                .type(SecurityScheme.Type.APIKEY)
                                .in(SecurityScheme.In.COOKIE)
                                .name(COOKIE)
                                .description(
                                        "The cookie of a session, set by POST /api/v1/session. A change also needs the header"
                                                + " X-CSRF-Token with the value that GET /api/v1/session answers."));
    }

    /** Drops the parameters that are the cookie, or that clients send by themselves. */
    @Override
    public @Nullable Parameter filterParameter(Parameter parameter) {
        boolean isNobodys = parameter.getIn() == Parameter.In.COOKIE
                || (parameter.getIn() == Parameter.In.HEADER && SENT_BY_CLIENTS.contains(parameter.getName()));
        return isNobodys ? null : parameter;
    }

    /** Whether a route is open to everyone. */
    static boolean isOpen(Operation operation) {
        return operation.getSecurity().isEmpty();
    }
}
