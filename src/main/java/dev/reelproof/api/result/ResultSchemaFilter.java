package dev.reelproof.api.result;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.api.Schemas;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;

/**
 * Puts the published schema of the result document into the description of the API. Its definitions become components beside it,
 * since a reference within a description begins at the description's own root; all else is word for word.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class ResultSchemaFilter implements OASFilter {
    static final String NAME = "Result";
    private static final String COMPONENTS = "#/components/schemas/";
    public static final String REFERENCE = COMPONENTS + NAME;

    private static final String DEFINITIONS = "$defs";
    private static final String DEFINITION = "#/" + DEFINITIONS + "/";
    private static final String REF = "$ref";

    private static final ObjectMapper JSON = new ObjectMapper();

    @Override
    public void filterOpenAPI(OpenAPI openApi) {
        if (openApi.getComponents() == null) {
            openApi.setComponents(OASFactory.createComponents());
        }
        try {
            ObjectNode document = (ObjectNode) JSON.readTree(Schemas.bytes("result"));
            JsonNode definitions = document.remove(DEFINITIONS);
            document.remove("$schema");
            document.remove("$id");
            openApi.getComponents().addSchema(NAME, schema(document));
            definitions.properties().forEach(entry -> openApi.getComponents()
                    .addSchema(component(entry.getKey()), schema(entry.getValue())));
        } catch (IOException e) {
            throw new UncheckedIOException("the result schema is no JSON", e);
        }
    }

    /** The component that a definition becomes: {@code networkPort} is {@code ResultNetworkPort}. */
    private static String component(String definition) {
        return NAME + definition.substring(0, 1).toUpperCase(Locale.ROOT) + definition.substring(1);
    }

    private static Schema schema(JsonNode node) {
        Schema schema = OASFactory.createSchema();
        described(node)
                .properties()
                .forEach(entry -> schema.set(entry.getKey(), JSON.convertValue(entry.getValue(), Object.class)));
        return schema;
    }

    private static JsonNode described(JsonNode node) {
        if (node instanceof ArrayNode array) {
            ArrayNode copy = JSON.createArrayNode();
            array.forEach(entry -> copy.add(described(entry)));
            return copy;
        }
        if (!(node instanceof ObjectNode object)) {
            return node;
        }
        ObjectNode copy = JSON.createObjectNode();
        for (Map.Entry<String, JsonNode> entry : object.properties()) {
            String key = entry.getKey();
            if (key.equals(REF) && entry.getValue().asText().startsWith(DEFINITION)) {
                copy.put(REF, COMPONENTS + component(entry.getValue().asText().substring(DEFINITION.length())));
            } else {
                copy.set(key, described(entry.getValue()));
            }
        }
        return copy;
    }
}
