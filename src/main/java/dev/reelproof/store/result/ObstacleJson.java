package dev.reelproof.store.result;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.store.RowJson;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What stood in the way of a finding, as a column holds it. */
final class ObstacleJson {
    private ObstacleJson() {}

    static String write(Obstacles obstacles) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ArrayNode named = node.putArray("named");
        for (Obstacle obstacle : obstacles.named()) {
            ObjectNode parts =
                    named.addObject().put("kind", obstacle.kind().id()).putObject("parts");
            obstacle.parts().forEach(parts::put);
        }
        node.put("more", obstacles.more());
        return RowJson.write(node);
    }

    static Obstacles read(String json) {
        JsonNode node = RowJson.read(json);
        List<Obstacle> named = new ArrayList<>();
        for (JsonNode one : node.get("named")) {
            Map<String, String> parts = new TreeMap<>();
            one.get("parts")
                    .properties()
                    .forEach(part -> parts.put(part.getKey(), part.getValue().textValue()));
            named.add(new Obstacle(Obstacle.Kind.named(one.get("kind").textValue()), parts));
        }
        return new Obstacles(named, node.get("more").intValue());
    }
}
