package dev.reelproof.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.NullNode;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** What differs between two states of one thing. */
public final class Changes {
    private static final ObjectMapper JSON = new ObjectMapper();

    private Changes() {}

    /**
     * The keys whose values differ, each with "from" and "to"; null stands for absent.
     *
     * @param before a JSON object
     * @param after a JSON object
     */
    public static Map<String, Object> between(String before, String after) {
        JsonNode first = read(before);
        JsonNode second = read(after);
        TreeSet<String> keys = new TreeSet<>();
        first.fieldNames().forEachRemaining(keys::add);
        second.fieldNames().forEachRemaining(keys::add);
        Map<String, Object> changes = new TreeMap<>();
        for (String key : keys) {
            JsonNode from = orNull(first.get(key));
            JsonNode to = orNull(second.get(key));
            if (!from.equals(to)) {
                changes.put(key, Map.of("from", from, "to", to));
            }
        }
        return changes;
    }

    private static JsonNode orNull(JsonNode value) {
        return value == null ? NullNode.getInstance() : value;
    }

    private static JsonNode read(String json) {
        try {
            return JSON.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("no JSON object: " + json, e);
        }
    }
}
