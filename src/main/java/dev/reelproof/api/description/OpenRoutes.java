package dev.reelproof.api.description;

import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.jboss.jandex.AnnotationInstance;
import org.jboss.jandex.AnnotationTarget;
import org.jboss.jandex.DotName;
import org.jboss.jandex.IndexView;
import org.jboss.jandex.MethodInfo;
import org.jspecify.annotations.Nullable;

/** The routes that are open to everyone: those whose method says {@link PermitAll}. */
final class OpenRoutes {
    private static final DotName PATH = DotName.createSimple(Path.class);

    private record Route(HttpMethod method, String path) {}

    private final Set<Route> open;

    OpenRoutes(IndexView index) {
        open = index.getAnnotations(PermitAll.class).stream()
                .filter(annotation -> annotation.target().kind() == AnnotationTarget.Kind.METHOD)
                .map(annotation -> annotation.target().asMethod())
                .flatMap(OpenRoutes::routes)
                .collect(Collectors.toUnmodifiableSet());
    }

    boolean contains(HttpMethod method, String path) {
        return open.contains(new Route(method, path));
    }

    private static Stream<Route> routes(MethodInfo method) {
        String path = said(method.declaringClass().declaredAnnotation(PATH)) + said(method.declaredAnnotation(PATH));
        return Stream.of(HttpMethod.values())
                .filter(http -> method.hasAnnotation(DotName.createSimple("jakarta.ws.rs." + http.name())))
                .map(http -> new Route(http, path));
    }

    private static String said(@Nullable AnnotationInstance path) {
        return path == null ? "" : path.value().asString();
    }
}
