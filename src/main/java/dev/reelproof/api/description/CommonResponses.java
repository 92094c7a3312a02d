package dev.reelproof.api.description;

import dev.reelproof.api.Problem;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;

/**
 * Gives every refusal its problem document, and every operation the refusals that any may answer. What is answered as bytes is
 * said to be so.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD, priority = DescriptionOrder.RESPONSES)
public class CommonResponses implements OASFilter {
    private static final String PROBLEM = "#/components/schemas/Problem";
    private static final Pattern REFUSAL = Pattern.compile("[45]\\d\\d");

    /** Media types that no schema describes. */
    private static final Pattern BYTES = Pattern.compile("application/(pdf|octet-stream)");

    /** What each refusal says that any operation may answer. */
    private static final Map<String, String> ANY = Map.of(
            "400", "what was sent cannot be read, or a parameter is not known here",
            "500", "the service failed; its log says why");

    private static final Map<String, String> OF_CLOSED = Map.of(
            "401", "nobody is signed in, or the token opens nothing",
            "403", "the caller's roles do not allow this");

    private static final Map<String, String> OF_PATHS = Map.of("404", "there is no such thing");

    private static final Map<String, String> OF_BODIES = Map.of(
            "413", "the body is too large",
            "415", "this media type is not taken here",
            "422", "what was sent can be read, but it cannot be so");

    @Override
    public void filterOpenAPI(OpenAPI openApi) {
        openApi.getPaths().getPathItems().forEach((path, item) -> item.getOperations()
                .values()
                .forEach(operation -> complete(operation, path.contains("{"))));
    }

    private static void complete(Operation operation, boolean picks) {
        add(operation, ANY);
        if (!SecuritySchemes.isOpen(operation)) {
            add(operation, OF_CLOSED);
        }
        if (picks) {
            add(operation, OF_PATHS);
        }
        if (operation.getRequestBody() != null) {
            add(operation, OF_BODIES);
        }
        Map<String, APIResponse> inOrder =
                new TreeMap<>(operation.getResponses().getAPIResponses());
        inOrder.forEach((status, response) -> describe(status, response));
        operation.getResponses().setAPIResponses(inOrder);
    }

    private static void add(Operation operation, Map<String, String> refusals) {
        refusals.forEach((status, description) -> {
            if (!operation.getResponses().hasAPIResponse(status)) {
                operation
                        .getResponses()
                        .addAPIResponse(status, OASFactory.createAPIResponse().description(description));
            }
        });
    }

    private static void describe(String status, APIResponse response) {
        if (REFUSAL.matcher(status).matches()) {
            response.setContent(OASFactory.createContent()
                    .addMediaType(
                            Problem.MEDIA_TYPE,
                            OASFactory.createMediaType()
                                    .schema(OASFactory.createSchema().ref(PROBLEM))));
        } else if (response.getContent() != null) {
            describeBytes(response.getContent());
        }
    }

    private static void describeBytes(Content content) {
        for (Map.Entry<String, MediaType> entry : content.getMediaTypes().entrySet()) {
            if (BYTES.matcher(entry.getKey()).matches()) {
                entry.getValue()
                        .setSchema(OASFactory.createSchema()
                                .addType(Schema.SchemaType.STRING)
                                .format("binary"));
            }
        }
    }
}
