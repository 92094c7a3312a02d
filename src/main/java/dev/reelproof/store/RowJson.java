package dev.reelproof.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import dev.reelproof.judgement.Step;
import java.util.ArrayList;
import java.util.List;

/** JSON columns, and the small lists that several rows hold as JSON. */
public final class RowJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private RowJson() {}

    /** The steps of an explanation, as a column holds them. */
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

    /** The steps that a column holds. */
    public static List<Step> steps(String json) {
        List<Step> steps = new ArrayList<>();
        for (JsonNode step : read(json)) {
            steps.add(new Step(
                    step.get("title").textValue(),
                    step.get("detail").textValue(),
                    step.get("value").asDouble(),
                    step.get("unit").textValue(),
                    step.get("source").textValue()));
        }
        return steps;
    }

    /** Sentences, as a column holds them. */
    public static String sentences(List<String> sentences) {
        return write(JSON.valueToTree(sentences));
    }

    /** The sentences that a column holds. */
    public static List<String> sentences(String json) {
        return JSON.convertValue(read(json), new TypeReference<List<String>>() {});
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
