package dev.reelproof.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.correction.Laws;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.reel.ProductReader;
import dev.reelproof.intake.result.ResultReader;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judge;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitLibrary;
import dev.reelproof.limit.file.LimitFiles;
import dev.reelproof.measurement.Product;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every reel of the demo, sent in another order, with its pairs numbered otherwise, or in other units: the judgement is the same. */
class SentOtherwiseTest {
    private static final Path DEMO = Path.of("demo-data");
    private static final OffsetDateTime RECEIVED = OffsetDateTime.parse("2026-03-10T08:00:00Z");
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final long SEED = 41;

    /** Each value passes through two conversions more, of 1.1e-16 each; levels keep as many digits. */
    private static final double CONVERSIONS = 1e-11;

    private static final Map<String, Product> PRODUCTS = new HashMap<>();
    private static LimitLibrary limits;

    /** A unit and how many of it make one of the unit that it stands for. Factors: see quantity.Units. */
    private record Unit(String text, double many) {}

    private static final Map<String, List<Unit>> OTHER_UNITS = Map.ofEntries(
            Map.entry("ohm", List.of(new Unit("kohm", 1e-3), new Unit("mohm", 1e3))),
            Map.entry("ohm/kft", List.of(new Unit("ohm/km", 1 / 0.3048), new Unit("kohm/1000 ft", 1e-3))),
            Map.entry("nF", List.of(new Unit("pF", 1e3), new Unit("µF", 1e-3))),
            Map.entry("nF/kft", List.of(new Unit("nF/km", 1 / 0.3048), new Unit("pF/kft", 1e3))),
            Map.entry("pF", List.of(new Unit("nF", 1e-3))),
            Map.entry("ns", List.of(new Unit("us", 1e-3), new Unit("ps", 1e3))),
            Map.entry("megohm", List.of(new Unit("gigohm", 1e-3), new Unit("kohm", 1e3))),
            Map.entry("MPa", List.of(new Unit("kPa", 1e3), new Unit("psi", 145.03773773020923))),
            Map.entry("N", List.of(new Unit("kN", 1e-3), new Unit("lbf", 1 / 4.4482216152605))),
            Map.entry("mm", List.of(new Unit("in", 1 / 25.4), new Unit("mil", 1 / 0.0254))),
            Map.entry("m", List.of(new Unit("ft", 1 / 0.3048), new Unit("km", 1e-3))),
            Map.entry("ft", List.of(new Unit("m", 0.3048), new Unit("kft", 1e-3))),
            Map.entry("MHz", List.of(new Unit("kHz", 1e3), new Unit("Hz", 1e6), new Unit("GHz", 1e-3))),
            Map.entry("kHz", List.of(new Unit("MHz", 1e-3), new Unit("Hz", 1e3))));

    @BeforeAll
    static void readWhatTheyAreJudgedBy() throws IOException {
        for (JsonNode product : JSON.readTree(Files.readAllBytes(DEMO.resolve("products.json")))) {
            String id = product.get("product").asText();
            PRODUCTS.put(id, ProductReader.read(id, JSON.writeValueAsBytes(product.get("register"))));
        }
        limits = LimitFiles.load(Optional.empty(), Laws::named);
    }

    /** A reel's document and its CSV files by name. */
    record Sent(String reel, JsonNode document, Map<String, String> files) {
        @Override
        public String toString() {
            return reel;
        }
    }

    static List<Sent> reels() throws IOException {
        List<Sent> reels = new ArrayList<>();
        for (JsonNode reel : JSON.readTree(Files.readAllBytes(DEMO.resolve("reels.json")))) {
            Map<String, String> files = new LinkedHashMap<>();
            for (JsonNode csv : reel.path("csv")) {
                Path file = DEMO.resolve(csv.asText());
                files.put(file.getFileName().toString(), Files.readString(file));
            }
            reels.add(new Sent(
                    reel.get("reel").asText(),
                    JSON.readTree(
                            Files.readAllBytes(DEMO.resolve(reel.get("result").asText()))),
                    files));
        }
        return reels;
    }

    private static Judgement judged(Sent sent, boolean documentLast) throws IOException {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part(Part.RESULT, "application/json", JSON.writeValueAsBytes(sent.document())));
        sent.files()
                .forEach((name, text) -> parts.add(new Part(name, "text/csv", text.getBytes(StandardCharsets.UTF_8))));
        if (documentLast) {
            Collections.reverse(parts);
        }
        var result = ResultReader.read(new Upload(parts), RECEIVED).result();
        Product product = PRODUCTS.get(result.product());
        return Judge.judge(
                result,
                product,
                limits.current(product.limitSet(), RECEIVED.toLocalDate()).orElseThrow(),
                Optional.empty(),
                "test");
    }

    private static void assertSame(Judgement one, Judgement other, double tolerance, boolean sameSubjects) {
        assertEquals(one.verdict(), other.verdict());
        assertEquals(one.findings().size(), other.findings().size());
        for (int i = 0; i < one.findings().size(); i++) {
            Finding was = one.findings().get(i);
            Finding is = other.findings().get(i);
            assertEquals(was.requirement(), is.requirement());
            assertEquals(was.outcome(), is.outcome(), was.requirement());
            assertEquals(was.points(), is.points(), was.requirement());
            if (was.figure() == null) {
                assertEquals(null, is.figure(), was.requirement());
                continue;
            }
            Figure before = was.figure();
            Figure after = is.figure();
            double noise = tolerance * Math.max(1, Math.abs(before.value()));
            assertEquals(before.value(), after.value(), noise, was.requirement());
            assertEquals(before.margin(), after.margin(), noise, was.requirement());
            if (sameSubjects) {
                assertEquals(before.subject(), after.subject(), was.requirement());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("reels")
    void inAnotherOrder(Sent sent) throws IOException {
        Random random = new Random(SEED);
        ObjectNode document = sent.document().deepCopy();
        for (String list : List.of("readings", "sweeps", "equipment")) {
            if (document.has(list)) {
                List<JsonNode> entries = new ArrayList<>();
                document.get(list).forEach(entries::add);
                Collections.shuffle(entries, random);
                document.set(list, JSON.createArrayNode().addAll(entries));
            }
        }
        Map<String, String> files = new LinkedHashMap<>();
        sent.files().forEach((name, text) -> files.put(name, shuffled(text, random)));
        assertSame(judged(sent, false), judged(new Sent(sent.reel(), document, files), true), 0, true);
    }

    /** The rows of one sweep stay in the order of their frequencies; which sweep comes first is drawn. */
    private static String shuffled(String csv, Random random) {
        List<String> lines = csv.lines().toList();
        Map<String, List<String>> bySubject = new LinkedHashMap<>();
        for (String line : lines.subList(1, lines.size())) {
            String subject = String.join(",", List.of(line.split(",", -1)).subList(0, 5));
            bySubject.computeIfAbsent(subject, key -> new ArrayList<>()).add(line);
        }
        List<List<String>> blocks = new ArrayList<>(bySubject.values());
        Collections.shuffle(blocks, random);
        StringBuilder text = new StringBuilder(lines.get(0)).append("\n");
        blocks.forEach(block -> block.forEach(line -> text.append(line).append("\n")));
        return text.toString();
    }

    @ParameterizedTest
    @MethodSource("reels")
    void withItsPairsNumberedOtherwise(Sent sent) throws IOException {
        int pairs = PRODUCTS.get(sent.document().get("product").asText()).pairs();
        List<Integer> numbers =
                new ArrayList<>(IntStream.rangeClosed(1, pairs).boxed().toList());
        Collections.shuffle(numbers, new Random(SEED));
        ObjectNode document = sent.document().deepCopy();
        for (String list : List.of("readings", "sweeps")) {
            document.path(list).forEach(entry -> {
                for (String key : List.of("pair", "partner")) {
                    if (entry.has(key)) {
                        ((ObjectNode) entry).put(key, numbers.get(entry.get(key).asInt() - 1));
                    }
                }
            });
        }
        Map<String, String> files = new LinkedHashMap<>();
        sent.files()
                .forEach((name, text) -> files.put(name, perRow(text, columns -> {
                    for (int column : new int[] {1, 2}) {
                        if (!columns[column].isEmpty()) {
                            columns[column] = String.valueOf(numbers.get(Integer.parseInt(columns[column]) - 1));
                        }
                    }
                    return columns;
                })));
        assertSame(judged(sent, false), judged(new Sent(sent.reel(), document, files), false), 0, false);
    }

    @ParameterizedTest
    @MethodSource("reels")
    void inOtherUnits(Sent sent) throws IOException {
        Random random = new Random(SEED);
        ObjectNode document = sent.document().deepCopy();
        inOtherUnit((ObjectNode) document.get("length"), random);
        ObjectNode temperature = (ObjectNode) document.get("temperature");
        double degrees = temperature.get("value").asDouble();
        boolean celsius = temperature.get("unit").asText().equals("°C");
        temperature.put("value", celsius ? degrees * 9 / 5 + 32 : (degrees - 32) * 5 / 9);
        temperature.put("unit", celsius ? "°F" : "°C");
        document.path("grids").forEach(grid -> inOtherUnit((ObjectNode) grid, random));
        document.path("readings").forEach(reading -> {
            inOtherUnit((ObjectNode) reading, random);
            if (reading.has("frequency")) {
                inOtherUnit((ObjectNode) reading.get("frequency"), random);
            }
        });
        document.path("sweeps").forEach(sweep -> inOtherUnit((ObjectNode) sweep, random));
        Map<String, String> files = new LinkedHashMap<>();
        Unit kilohertz = new Unit("kHz", 1e3);
        sent.files()
                .forEach((name, text) -> files.put(name, perRow(text, columns -> {
                    assertEquals("MHz", columns[6]);
                    columns[5] = String.valueOf(Double.parseDouble(columns[5]) * kilohertz.many());
                    columns[6] = kilohertz.text();
                    return columns;
                })));
        assertSame(judged(sent, false), judged(new Sent(sent.reel(), document, files), false), CONVERSIONS, true);
    }

    private static String perRow(String csv, UnaryOperator<String[]> change) {
        List<String> lines = csv.lines().toList();
        StringBuilder text = new StringBuilder(lines.get(0)).append("\n");
        lines.stream()
                .skip(1)
                .map(line -> String.join(",", change.apply(line.split(",", -1))))
                .forEach(line -> text.append(line).append("\n"));
        return text.toString();
    }

    private static void inOtherUnit(ObjectNode quantity, Random random) {
        String text = quantity.get("unit").asText();
        if (List.of("%", "count", "dB", "pF/kft").contains(text)) {
            return;
        }
        List<Unit> others = OTHER_UNITS.get(text);
        assertNotNull(others, "no other unit known for " + text);
        // A resistance per another length than its pair's other conductor would give no unbalance: a bay keeps to one
        // length.
        boolean perLength = text.contains("/");
        Unit unit = others.get(perLength ? 0 : random.nextInt(others.size()));
        quantity.put("unit", unit.text());
        if (quantity.has("values")) {
            ArrayNode values = JSON.createArrayNode();
            quantity.get("values").forEach(value -> values.add(value.asDouble() * unit.many()));
            quantity.set("values", values);
        } else {
            quantity.put("value", quantity.get("value").asDouble() * unit.many());
        }
    }
}
