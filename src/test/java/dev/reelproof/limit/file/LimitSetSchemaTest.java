package dev.reelproof.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.limit.Interpolation;
import dev.reelproof.limit.LimitSamples;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Property;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The published schema and the readers must say the same. */
class LimitSetSchemaTest {
    private static final Path FOLDER = Path.of("src/main/java/dev/reelproof/limit/file");
    private static final List<String> READERS = List.of(
            "Entry",
            "LimitSetReader",
            "RequirementsReader",
            "RequirementReader",
            "ParticularsReader",
            "LimitReader",
            "CurveReader",
            "TableReader",
            "AllowanceReader",
            "DecisionRuleReader");
    private static final Pattern KEY_READ = Pattern.compile(
            "\\b(?:path|has|at|list|text|textIfAny|number|whole|constant|quantity|valueInFixedUnit|megahertz|temperature|date|pairs)"
                    + "\\(\"([a-z-]+)\"" + "|\\b(?:word|ohm)\\([^()\"]*, \"([a-z-]+)\"");

    private static JsonNode schema;

    @BeforeAll
    static void load() throws IOException {
        schema = new ObjectMapper()
                .readTree(LimitSetSchemaTest.class.getResourceAsStream("/schemas/limit-set.schema.json"));
    }

    @Test
    void isOfDraft202012() {
        assertEquals(
                "https://json-schema.org/draft/2020-12/schema",
                schema.path("$schema").asText());
    }

    @Test
    void everyMappingRefusesUnknownKeysButACorrectionWhoseCoefficientsTheLawKnows() {
        List<JsonNode> open = mappings().stream()
                .filter(mapping -> !mapping.path("additionalProperties").isBoolean()
                        || mapping.path("additionalProperties").asBoolean())
                .toList();

        assertEquals(List.of(schema.path("$defs").path("correction")), open);
        assertTrue(mappings().size() > 8);
    }

    @Test
    void readersReadTheKeysOfTheSchemaAndNoOthers() {
        Set<String> inSchema = new TreeSet<>();
        mappings().forEach(mapping -> mapping.path("properties").fieldNames().forEachRemaining(inSchema::add));
        Set<String> read = new TreeSet<>();
        for (String reader : READERS) {
            Matcher matcher = KEY_READ.matcher(LimitSamples.text(FOLDER.resolve(reader + ".java")));
            while (matcher.find()) {
                read.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
            }
        }

        assertEquals(inSchema, read);
    }

    @Test
    void wordsAreThoseOfTheTypes() {
        assertWords(Property.values(), Property::id, "/$defs/property/enum");
        assertWords(Statistic.values(), Statistic::word, "/$defs/requirement/properties/statistic/enum");
        assertWords(Scope.values(), Scope::word, "/$defs/requirement/properties/scope/enum");
        assertWords(Per.values(), Per::word, "/$defs/requirement/properties/per/enum");
        assertWords(
                Interpolation.values(),
                Interpolation::word,
                "/$defs/requirement/properties/table/properties/interpolation/enum");
        assertWords(RoundingRule.values(), RoundingRule::word, "/properties/rounding/enum");
    }

    private static <T> void assertWords(T[] values, Function<T, String> word, String pointer) {
        List<String> words = new ArrayList<>();
        schema.at(pointer).forEach(entry -> words.add(entry.asText()));

        assertFalse(words.isEmpty());
        assertEquals(Arrays.stream(values).map(word).toList(), words);
    }

    private static List<JsonNode> mappings() {
        return all(schema)
                .filter(node -> node.path("type").asText().equals("object"))
                .toList();
    }

    private static Stream<JsonNode> all(JsonNode node) {
        List<JsonNode> children = new ArrayList<>();
        node.forEach(children::add);
        return Stream.concat(Stream.of(node), children.stream().flatMap(LimitSetSchemaTest::all));
    }
}
