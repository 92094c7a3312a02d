package dev.reelproof.intake.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import dev.reelproof.intake.Fault;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.result.BrokenResults.Broken;
import dev.reelproof.measurement.Property;
import dev.reelproof.network.NetworkSweeps;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The published schema and the reader say the same. */
class ResultSchemaTest {
    private static final OffsetDateTime RECEIVED = OffsetDateTime.parse("2026-03-02T15:00:00Z");
    private static final String TEXT = text();
    private static final JsonSchema SCHEMA =
            JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(TEXT);

    private static String text() {
        try (InputStream in = ResultSchemaTest.class.getResourceAsStream("/schemas/result.schema.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean schemaTakes(String json) {
        return SCHEMA.validate(json, InputFormat.JSON).isEmpty();
    }

    private static ReadResult read(String json) {
        return ResultReader.read(Upload.ofDocument(json.getBytes(StandardCharsets.UTF_8)), RECEIVED);
    }

    @Test
    void bothTakeTheSampleOfTheContract() {
        String sample = BrokenResults.sample();
        assertTrue(schemaTakes(sample), () -> SCHEMA.validate(sample, InputFormat.JSON)
                .toString());
        assertEquals(5, read(sample).result().readings().size());
    }

    @Test
    void bothTakeNullForAnOptionalKeyAndTheKeysThatTheSampleLacks() {
        String more = BrokenResults.sample()
                .replace("\"bay-2\"", "null")
                .replace("\"conductor\": \"a\"", "\"conductor\": \"a\", \"partner\": null, \"end\": null")
                .replace("\"2026-12-31\"", "\"2026-12-31\", \"properties\": [\"next\", \"return-loss\"]")
                .replace(
                        "{\"property\": \"spark-faults\"",
                        "{\"property\": \"strip-force\", \"sample\": 2, \"value\": 20, \"unit\": \"N\"},"
                                + "{\"property\": \"propagation-delay\", \"pair\": 1, \"frequency\": {\"value\": 10,"
                                + " \"unit\": \"MHz\"}, \"value\": 1500, \"unit\": \"ns\"},{\"property\": \"spark-faults\"");
        assertTrue(
                schemaTakes(more), () -> SCHEMA.validate(more, InputFormat.JSON).toString());
        assertEquals(6, read(more).result().readings().size());
        assertEquals(5, read(more).result().sweeps().size());
    }

    static Stream<Broken> broken() {
        return BrokenResults.all().stream();
    }

    @ParameterizedTest
    @MethodSource("broken")
    void theReaderRefusesEveryBrokenSampleAndTheSchemaThoseItCanSee(Broken broken) {
        assertThrows(IntakeException.class, () -> read(broken.json()));
        assertEquals(broken.schemaToo(), !schemaTakes(broken.json()));
    }

    @Test
    void theSchemaNamesThePropertiesOfTheVocabulary() throws IOException {
        JsonNode definitions = new ObjectMapper().readTree(TEXT).get("$defs");
        assertEquals(
                Arrays.stream(Property.values()).map(Property::id).toList(),
                names(definitions.get("property").get("enum")));
        assertEquals(
                Arrays.stream(Property.values())
                        .filter(Property::isSweep)
                        .map(Property::id)
                        .toList(),
                names(definitions.get("sweptProperty").get("enum")));
        assertEquals(
                NetworkSweeps.DERIVABLE.stream().map(Property::id).toList(),
                names(definitions.get("derivableProperty").get("enum")));
    }

    private static List<String> names(JsonNode array) {
        List<String> names = new ArrayList<>();
        array.forEach(name -> names.add(name.textValue()));
        return names;
    }

    @Test
    void everyKeyOfTheSchemaIsKnownToTheReader() throws IOException {
        JsonNode schema = new ObjectMapper().readTree(TEXT);
        JsonNode definitions = schema.get("$defs");
        assertKnown(schema, "{%s}");
        assertKnown(definitions.get("equipment"), "{\"equipment\": [{%s}]}");
        assertKnown(definitions.get("grid"), "{\"grids\": {\"g\": {%s}}}");
        assertKnown(definitions.get("reading"), "{\"readings\": [{%s}]}");
        assertKnown(definitions.get("sweep"), "{\"sweeps\": [{%s}]}");
        assertKnown(definitions.get("network"), "{\"networks\": [{%s}]}");
        assertKnown(definitions.get("networkPort"), "{\"networks\": [{\"ports\": [{%s}]}]}");
    }

    /** Gives each key of an object of the schema, and one it has not, a wrong value: only the last may be unknown. */
    private static void assertKnown(JsonNode object, String around) {
        StringBuilder keys = new StringBuilder("\"surplus\": []");
        object.get("properties")
                .fieldNames()
                .forEachRemaining(key -> keys.append(", \"").append(key).append("\": true"));
        String json = around.formatted(keys);
        assertFalse(schemaTakes(json));
        IntakeException refused = assertThrows(IntakeException.class, () -> read(json));
        List<String> unknown = refused.faults().stream()
                .filter(fault -> fault.message().startsWith("unknown key"))
                .map(Fault::where)
                .toList();
        assertEquals(1, unknown.size(), unknown::toString);
        assertTrue(unknown.get(0).endsWith("/surplus"), unknown::toString);
    }

    @Test
    void everyPartOfTheSchemaHasATitleAndADescription() throws IOException {
        JsonNode schema = new ObjectMapper().readTree(TEXT);
        List<String> bare = new ArrayList<>();
        collectBare("", schema.get("properties"), bare);
        schema.get("$defs").properties().forEach(definition -> {
            if (definition.getValue().has("properties")) {
                collectBare("/" + definition.getKey(), definition.getValue().get("properties"), bare);
            }
        });
        assertEquals(List.of(), bare);
    }

    private static void collectBare(String at, JsonNode properties, List<String> bare) {
        properties.properties().forEach(property -> {
            JsonNode value = property.getValue();
            if (!value.has("$ref") && !(value.has("title") && value.has("description"))) {
                bare.add(at + "/" + property.getKey());
            }
        });
    }
}
