package dev.reelproof.store.result;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.judgement.Doubt;
import dev.reelproof.judgement.Units;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Subject;
import dev.reelproof.store.RowJson;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Where it is least sure that a requirement is met, as a column holds it; what is absent is left out. */
final class DoubtJson {
    private DoubtJson() {}

    static String write(Doubt doubt) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        Subject subject = doubt.subject();
        put(node, "pair", subject.pair());
        put(node, "partner", subject.partner());
        put(node, "sample", subject.sample());
        if (subject.conductor() != null) {
            node.put("conductor", subject.conductor().letter());
        }
        if (subject.end() != null) {
            node.put("end", subject.end().word());
        }
        if (doubt.units() != null) {
            node.put("coreUnit", doubt.units().unit());
            put(node, "otherCoreUnit", doubt.units().other());
        }
        if (doubt.megahertz() != null) {
            node.put("megahertz", doubt.megahertz());
        }
        node.put("value", doubt.value());
        node.put("margin", doubt.margin());
        node.put("probability", doubt.probability());
        node.put("sum", doubt.sum());
        return RowJson.write(node);
    }

    private static void put(ObjectNode node, String name, @Nullable Integer number) {
        if (number != null) {
            node.put(name, number);
        }
    }

    static Doubt read(String json) {
        JsonNode node = RowJson.read(json);
        String conductor = word(node, "conductor");
        String end = word(node, "end");
        return new Doubt(
                new Subject(
                        number(node, "pair"),
                        number(node, "partner"),
                        conductor == null ? null : Conductor.valueOf(conductor),
                        end == null ? null : End.valueOf(end),
                        number(node, "sample")),
                node.has("coreUnit") ? new Units(node.get("coreUnit").intValue(), number(node, "otherCoreUnit")) : null,
                node.has("megahertz") ? (Double) node.get("megahertz").doubleValue() : null,
                node.get("value").doubleValue(),
                node.get("margin").doubleValue(),
                node.get("probability").doubleValue(),
                node.get("sum").doubleValue());
    }

    private static @Nullable Integer number(JsonNode node, String name) {
        return node.has(name) ? (Integer) node.get(name).intValue() : null;
    }

    private static @Nullable String word(JsonNode node, String name) {
        return node.has(name) ? node.get(name).textValue().toUpperCase(Locale.ROOT) : null;
    }
}
