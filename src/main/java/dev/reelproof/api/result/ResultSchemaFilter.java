package dev.reelproof.api.result;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
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
 * since a reference within a description begins at the description's own root; and a choice of null is written as a type, which
 * generators of clients understand. Both say the same as the published schema.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class ResultSchemaFilter implements OASFilter {
    static final String NAME = "Result";
    private static final String COMPONENTS = "#/components/schemas/";
    public static final String REFERENCE = COMPONENTS + NAME;

    private static final String DEFINITIONS = "$defs";
    private static final String DEFINITION = "#/" + DEFINITIONS + "/";
    private static final String REF = "$ref";
    private static final String TYPE = "type";
    private static final String NULL = "null";

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
        typeTheWords(copy);
        joinNull(copy);
        return copy;
    }

    /** A list of words says that it is of strings; a null among them becomes a type. */
    private static void typeTheWords(ObjectNode schema) {
        if (!(schema.get("enum") instanceof ArrayNode words) || schema.has(TYPE)) {
            return;
        }
        ArrayNode plain = JSON.createArrayNode();
        words.forEach(word -> {
            if (!word.isNull()) {
                plain.add(word);
            }
        });
        schema.set("enum", plain);
        schema.set(
                TYPE,
                plain.size() == words.size()
                        ? TextNode.valueOf("string")
                        : JSON.createArrayNode().add("string").add(NULL));
    }

    /** A choice between null and one object becomes that object, or null. */
    private static void joinNull(ObjectNode schema) {
        if (!(schema.get("oneOf") instanceof ArrayNode choices)
                || choices.size() != 2
                || !NULL.equals(choices.get(0).path(TYPE).asText())) {
            return;
        }
        ObjectNode other = (ObjectNode) choices.get(1);
        schema.remove("oneOf");
        other.properties().forEach(entry -> schema.putIfAbsent(entry.getKey(), entry.getValue()));
        schema.set(TYPE, JSON.createArrayNode().add(other.get(TYPE)).add(NULL));
    }
}
