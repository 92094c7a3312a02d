package dev.reelproof.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.judgement.Step;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Length;
import dev.reelproof.store.reel.RegisteredReel;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The JSON columns: product definitions, steps of an explanation, warnings. Lengths are in metres. */
public final class RowJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private RowJson() {}

    public static String product(Product product) {
        ObjectNode node = JSON.createObjectNode();
        node.put("description", product.description());
        node.put("limitSet", product.limitSet());
        node.put("pairs", product.pairs());
        node.put("gauge", product.gauge());
        node.put("nominalVelocity", product.nominalVelocity());
        ArrayNode lays = node.putArray("lays");
        new TreeMap<>(product.lays())
                .forEach((pair, lay) -> lays.addObject().put("pair", pair).put("metres", lay.metres()));
        ArrayNode units = node.putArray("units");
        for (CoreUnit unit : product.units()) {
            ObjectNode one = units.addObject()
                    .put("unit", unit.unit())
                    .put("from", unit.firstPair())
                    .put("to", unit.lastPair());
            ArrayNode adjacent = one.putArray("adjacentTo");
            new TreeSet<>(unit.adjacentTo()).forEach(adjacent::add);
        }
        return write(node);
    }

    /** What is registered of a reel, for the audit trail. */
    public static String reel(RegisteredReel reel) {
        ObjectNode node = JSON.createObjectNode();
        node.put("product", reel.product());
        node.putObject("length").put("value", reel.sentLength()).put("unit", reel.sentUnit());
        node.put("order", reel.order());
        node.put("customer", reel.customer());
        return write(node);
    }

    public static Product product(String id, String json) {
        JsonNode node = read(json);
        Map<Integer, Length> lays = new TreeMap<>();
        for (JsonNode lay : node.get("lays")) {
            lays.put(
                    lay.get("pair").intValue(),
                    Length.ofMetres(lay.get("metres").doubleValue()));
        }
        List<CoreUnit> units = new ArrayList<>();
        for (JsonNode unit : node.get("units")) {
            Set<Integer> adjacent = new HashSet<>();
            unit.get("adjacentTo").forEach(other -> adjacent.add(other.intValue()));
            units.add(new CoreUnit(
                    unit.get("unit").intValue(),
                    unit.get("from").intValue(),
                    unit.get("to").intValue(),
                    adjacent));
        }
        return new Product(
                id,
                text(node, "description"),
                text(node, "limitSet"),
                node.get("pairs").intValue(),
                text(node, "gauge"),
                node.get("nominalVelocity").isNull()
                        ? null
                        : node.get("nominalVelocity").doubleValue(),
                lays,
                units);
    }

    public static String steps(List<Step> steps) {
        ArrayNode array = JSON.createArrayNode();
        for (Step step : steps) {
            array.addObject()
                    .put("title", step.title())
                    .put("detail", step.detail())
                    .put("value", step.value())
                    .put("unit", step.unit())
                    .put("source", step.source());
        }
        return write(array);
    }

    public static List<Step> steps(String json) {
        List<Step> steps = new ArrayList<>();
        for (JsonNode step : read(json)) {
            steps.add(new Step(
                    text(step, "title"),
                    text(step, "detail"),
                    step.get("value").asDouble(),
                    text(step, "unit"),
                    text(step, "source")));
        }
        return steps;
    }

    public static String obstacles(Obstacles obstacles) {
        ObjectNode node = JSON.createObjectNode();
        ArrayNode named = node.putArray("named");
        for (Obstacle obstacle : obstacles.named()) {
            ObjectNode parts =
                    named.addObject().put("kind", obstacle.kind().id()).putObject("parts");
            obstacle.parts().forEach(parts::put);
        }
        node.put("more", obstacles.more());
        return write(node);
    }

    public static Obstacles obstacles(String json) {
        JsonNode node = read(json);
        List<Obstacle> named = new ArrayList<>();
        for (JsonNode one : node.get("named")) {
            Map<String, String> parts = new TreeMap<>();
            one.get("parts")
                    .properties()
                    .forEach(part -> parts.put(part.getKey(), part.getValue().textValue()));
            named.add(new Obstacle(Obstacle.Kind.named(text(one, "kind")), parts));
        }
        return new Obstacles(named, node.get("more").intValue());
    }

    public static String equipment(List<Equipment> equipment) {
        ArrayNode array = JSON.createArrayNode();
        for (Equipment instrument : equipment) {
            ObjectNode one = array.addObject()
                    .put("id", instrument.id())
                    .put(
                            "calibrationDue",
                            instrument.calibrationDue() == null
                                    ? null
                                    : instrument.calibrationDue().toString())
                    .put("class", instrument.equipmentClass());
            ArrayNode properties = one.putArray("properties");
            instrument.properties().stream().sorted().map(Property::id).forEach(properties::add);
        }
        return write(array);
    }

    public static List<Equipment> equipment(String json) {
        List<Equipment> equipment = new ArrayList<>();
        for (JsonNode one : read(json)) {
            Set<Property> properties = new HashSet<>();
            one.get("properties").forEach(name -> properties.add(Property.named(name.textValue())));
            String due = text(one, "calibrationDue");
            equipment.add(new Equipment(
                    text(one, "id"),
                    due == null ? null : LocalDate.parse(due),
                    properties,
                    // Records of before the class was known have none.
                    one.path("class").textValue()));
        }
        return equipment;
    }

    public static String sentences(List<String> sentences) {
        return write(JSON.valueToTree(sentences));
    }

    public static List<String> sentences(String json) {
        return JSON.convertValue(read(json), new TypeReference<List<String>>() {});
    }

    private static String text(JsonNode node, String field) {
        return node.get(field).isNull() ? null : node.get(field).textValue();
    }

    /** A JSON text. */
    public static String write(JsonNode node) {
        try {
            return JSON.writeValueAsString(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a JSON column could not be written", e);
        }
    }

    /** What a JSON column holds. */
    public static JsonNode read(String json) {
        try {
            return JSON.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a JSON column could not be read: " + e.getMessage(), e);
        }
    }
}
