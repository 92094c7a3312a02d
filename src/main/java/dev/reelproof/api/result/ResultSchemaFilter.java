package dev.reelproof.api.result;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.api.Schemas;
import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.media.Schema;

/** Puts the published schema of the result document into the description of the API, word for word. */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class ResultSchemaFilter implements OASFilter {
    static final String NAME = "Result";
    public static final String REFERENCE = "#/components/schemas/" + NAME;

    private static final ObjectMapper JSON = new ObjectMapper();

    @Override
    public void filterOpenAPI(OpenAPI openApi) {
        if (openApi.getComponents() == null) {
            openApi.setComponents(OASFactory.createComponents());
        }
        openApi.getComponents().addSchema(NAME, schema());
    }

    private static Schema schema() {
        try {
            JsonNode tree = JSON.readTree(Schemas.bytes("result"));
            Schema schema = OASFactory.createSchema();
            tree.properties()
                    .forEach(entry -> schema.set(entry.getKey(), JSON.convertValue(entry.getValue(), Object.class)));
            return schema;
        } catch (IOException e) {
            throw new UncheckedIOException("the result schema is no JSON", e);
        }
    }
}
