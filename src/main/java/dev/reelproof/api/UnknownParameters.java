package dev.reelproof.api;

import dev.reelproof.intake.Fault;
import dev.reelproof.intake.IntakeException;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import java.lang.annotation.Annotation;
import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/** Refuses query parameters that a route does not know: passed over, a mistyped one would answer another question. */
class UnknownParameters {

    /** @throws IntakeException when there is one; it names each, and those that the route knows */
    @ServerRequestFilter
    void check(ContainerRequestContext request, ResourceInfo resource) {
        Set<String> sent = request.getUriInfo().getQueryParameters().keySet();
        if (sent.isEmpty() || resource.getResourceMethod() == null) {
            return;
        }
        Set<String> known = known(resource.getResourceMethod());
        List<Fault> unknown = sent.stream()
                .filter(name -> !known.contains(name))
                .sorted()
                .map(name -> new Fault(
                        "?" + name,
                        "this route has no parameter '" + name + "'; "
                                + (known.isEmpty() ? "it takes none" : "it takes " + String.join(", ", known))))
                .toList();
        if (!unknown.isEmpty()) {
            throw new IntakeException(IntakeException.Kind.MALFORMED, unknown, 0);
        }
    }

    private static Set<String> known(Method method) {
        return Arrays.stream(method.getParameterAnnotations())
                .flatMap((Annotation[] annotations) -> Arrays.stream(annotations))
                .filter(QueryParam.class::isInstance)
                .map(annotation -> ((QueryParam) annotation).value())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
