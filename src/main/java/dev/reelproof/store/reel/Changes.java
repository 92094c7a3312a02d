package dev.reelproof.store.reel;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.NullNode;
import dev.reelproof.store.RowJson;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What a change made of one thing, for the audit trail.
 *
 * @param isNew whether there was nothing before
 * @param values the keys whose values differ, each with "from" and "to" in values that JSON has, its null for what is absent
 */
public record Changes(boolean isNew, Map<String, Map<String, Object>> values) {

    public Changes {
        values = Collections.unmodifiableMap(new TreeMap<>(values));
    }

    /** Whether everything stays as it was. */
    public boolean isEmpty() {
        return !isNew && values.isEmpty();
    }

    /**
     * What differs between two states.
     *
     * @param before a JSON object; empty when there was nothing
     * @param after a JSON object
     */
    static Changes between(Optional<String> before, String after) {
        JsonNode first = RowJson.read(before.orElse("{}"));
        JsonNode second = RowJson.read(after);
        TreeSet<String> keys = new TreeSet<>();
        first.fieldNames().forEachRemaining(keys::add);
        second.fieldNames().forEachRemaining(keys::add);
        Map<String, Map<String, Object>> values = new TreeMap<>();
        for (String key : keys) {
            JsonNode from = orNull(first.get(key));
            JsonNode to = orNull(second.get(key));
            if (!from.equals(to)) {
                values.put(key, Map.of("from", from, "to", to));
            }
        }
        return new Changes(before.isEmpty(), values);
    }

    private static JsonNode orNull(@Nullable JsonNode value) {
        return value == null ? NullNode.getInstance() : value;
    }
}
