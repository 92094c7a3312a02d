package dev.reelproof.api.description;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.jspecify.annotations.Nullable;

/**
 * Writes times, days and UUIDs where they stand, as strings of a format, instead of as components under a Java class's name: a
 * generated client takes such a component for a class of its own. What may be such a value or null is one type, too.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD, priority = DescriptionOrder.NAMES)
public class PlainTypes implements OASFilter {
    private static final String COMPONENTS = "#/components/schemas/";

    /** The format of each, by the name of its Java class. */
    static final Map<String, String> FORMATS =
            Map.of("Instant", "date-time", "OffsetDateTime", "date-time", "LocalDate", "date", "UUID", "uuid");

    @Override
    public Schema filterSchema(Schema schema) {
        String format = format(schema);
        if (format != null) {
            schema.setRef(null);
            schema.setType(List.of(SchemaType.STRING));
            schema.setFormat(format);
        }
        joinNull(schema);
        return schema;
    }

    @Override
    public void filterOpenAPI(OpenAPI openApi) {
        FORMATS.keySet().forEach(openApi.getComponents()::removeSchema);
    }

    private static @Nullable String format(Schema schema) {
        String ref = schema.getRef();
        return ref == null || !ref.startsWith(COMPONENTS) ? null : FORMATS.get(ref.substring(COMPONENTS.length()));
    }

    /** A choice between something and null: a plain value becomes one type; of an object the choice alone is left. */
    private static void joinNull(Schema schema) {
        List<Schema> choices = schema.getAnyOf();
        if (choices == null || choices.size() != 2 || !isNull(choices.get(1))) {
            return;
        }
        Schema value = choices.get(0);
        String format = format(value) == null ? value.getFormat() : format(value);
        if (format == null) {
            schema.setType(null);
        } else {
            schema.setAnyOf(null);
            schema.setType(List.of(SchemaType.STRING, SchemaType.NULL));
            schema.setFormat(format);
        }
    }

    private static boolean isNull(Schema schema) {
        return List.of(SchemaType.NULL).equals(schema.getType());
    }
}
