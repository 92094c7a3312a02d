package dev.reelproof.limit.file;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.PathType;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.Locale;
import java.util.StringJoiner;

/** The published JSON Schema of limit set files, and what its refusals mean in words. */
final class LimitSetSchema {
    private static final String RESOURCE = "/schemas/limit-set.schema.json";

    private final JsonSchema schema;

    LimitSetSchema() {
        this(RESOURCE);
    }

    /** The schema of another kind of file in {@code limits/}. */
    LimitSetSchema(String resource) {
        try (InputStream in = LimitSetSchema.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program was packaged without " + resource);
            }
            schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(
                            in,
                            SchemaValidatorsConfig.builder()
                                    .pathType(PathType.JSON_POINTER)
                                    .locale(Locale.ENGLISH)
                                    .build());
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + resource, e);
        }
    }

    void check(JsonNode document, FaultList faults) {
        for (ValidationMessage message : schema.validate(document)) {
            String pointer = message.getInstanceLocation().toString();
            switch (message.getType()) {
                case "additionalProperties" -> faults.add(
                        pointer + YamlDocument.step(message.getProperty()),
                        "unknown key '" + message.getProperty() + "'; known here: " + knownKeys(message));
                case "required" -> faults.add(pointer, "the key '" + message.getProperty() + "' is missing");
                case "enum" -> faults.add(pointer, quote(message) + " is not one of " + list(message.getSchemaNode()));
                case "pattern" -> faults.add(
                        pointer,
                        quote(message) + " must be "
                                + besideKeyword(message, "description").asText());
                case "type" -> faults.add(
                        pointer,
                        quote(message) + " must be "
                                + withArticle(besideKeyword(message, "type").asText()));
                case "minimum", "maximum" -> faults.add(pointer, quote(message) + " must be " + range(message));
                case "exclusiveMinimum" -> faults.add(
                        pointer,
                        quote(message) + " must be above "
                                + message.getSchemaNode().asText());
                case "minItems" -> faults.add(
                        pointer,
                        quote(message) + " needs entries: "
                                + message.getSchemaNode().asText() + " or more");
                default -> faults.add(pointer, quote(message) + ": " + message.getError());
            }
        }
    }

    /** A closed range as its description says it; a lower bound alone as itself. */
    private String range(ValidationMessage message) {
        return subschema(message).has("maximum")
                ? besideKeyword(message, "description").asText()
                : message.getSchemaNode().asText() + " or more";
    }

    private static String quote(ValidationMessage message) {
        JsonNode value = message.getInstanceNode();
        return value.isValueNode() ? "'" + value.asText() + "'" : value.isArray() ? "this list" : "this mapping";
    }

    private static String withArticle(String type) {
        return switch (type) {
            case "string" -> "a text";
            case "array" -> "a list";
            case "object" -> "a mapping of keys to values";
            case "integer" -> "a whole number";
            case "boolean" -> "true or false";
            default -> "a " + type;
        };
    }

    /** Another keyword of the subschema whose keyword refused. */
    private JsonNode besideKeyword(ValidationMessage message, String neighbour) {
        return subschema(message).path(neighbour);
    }

    private JsonNode subschema(ValidationMessage message) {
        String keyword = message.getSchemaLocation().getFragment().toString();
        return schema.getSchemaNode().at(JsonPointer.compile(keyword.substring(0, keyword.lastIndexOf('/'))));
    }

    private String knownKeys(ValidationMessage message) {
        StringJoiner keys = new StringJoiner(", ");
        for (Iterator<String> names = subschema(message).path("properties").fieldNames(); names.hasNext(); ) {
            keys.add(names.next());
        }
        return keys.toString();
    }

    private static String list(JsonNode words) {
        StringJoiner list = new StringJoiner(", ");
        words.forEach(word -> list.add(word.asText()));
        return list.toString();
    }
}
