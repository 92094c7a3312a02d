package dev.reelproof.store.lot;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.Setting;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.store.RowJson;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Lots and settings in JSON columns. */
public final class LotJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private LotJson() {}

    /** A waiting report, as the HTTP contract shapes a lot. */
    public static String lot(Lot lot) {
        ObjectNode node = NODES.objectNode();
        node.put("id", lot.id().value());
        node.put("plant", lot.plant());
        node.put("kind", lot.kind().word());
        node.set("quantity", amount(lot.quantity().value(), lot.quantity().unit()));
        node.put("made", lot.made().toString());
        put(node, "step", lot.step());
        put(node, "machine", lot.machine());
        if (lot.run() != null) {
            StepRun run = lot.run();
            node.put("run", run.id().value());
            put(node, "line", run.line());
            put(node, "operator", run.operator());
            put(node, "shift", run.shift());
            put(node, "started", run.started());
            put(node, "finished", run.finished());
            node.set("settings", settingsNode(run.settings()));
        }
        ArrayNode inputs = node.putArray("inputs");
        for (LotInput input : lot.inputs()) {
            ObjectNode one = inputs.addObject().put("lot", input.lot().value());
            one.set(
                    "quantity",
                    amount(input.quantity().value(), input.quantity().unit()));
            Placement placement = input.placement();
            if (placement != null) {
                ObjectNode position = one.putObject("position");
                position.set("from", amount(placement.from(), placement.unit()));
                position.set("to", amount(placement.to(), placement.unit()));
                position.set("onParentFrom", amount(placement.onParentFrom(), placement.onParentUnit()));
                position.set("onParentTo", amount(placement.onParentTo(), placement.onParentUnit()));
            }
        }
        ArrayNode samples = node.putArray("samples");
        for (Sample sample : lot.samples()) {
            ObjectNode one = samples.addObject();
            one.put("property", sample.property());
            one.put("value", sample.value());
            one.put("unit", sample.unit());
            Double at = sample.at();
            String atUnit = sample.atUnit();
            if (at != null && atUnit != null) {
                one.set("at", amount(at, atUnit));
            }
            put(one, "taken", sample.taken());
        }
        return RowJson.write(node);
    }

    /** A waiting report read back. */
    public static Lot lot(String json) {
        JsonNode node = RowJson.read(json);
        List<LotInput> inputs = new ArrayList<>();
        for (JsonNode input : node.get("inputs")) {
            inputs.add(new LotInput(
                    new LotId(input.get("lot").textValue()),
                    amount(input.get("quantity")),
                    input.has("position") ? placement(input.get("position")) : null));
        }
        List<Sample> samples = new ArrayList<>();
        for (JsonNode sample : node.get("samples")) {
            JsonNode at = sample.path("at");
            samples.add(new Sample(
                    text(sample, "property"),
                    sample.get("value").doubleValue(),
                    text(sample, "unit"),
                    timeOrNull(sample, "taken"),
                    at.isObject() ? at.get("value").doubleValue() : null,
                    at.isObject() ? text(at, "unit") : null));
        }
        StepRun run = node.has("run")
                ? new StepRun(
                        new RunId(text(node, "run")),
                        textOrNull(node, "step"),
                        textOrNull(node, "machine"),
                        textOrNull(node, "line"),
                        textOrNull(node, "operator"),
                        textOrNull(node, "shift"),
                        timeOrNull(node, "started"),
                        timeOrNull(node, "finished"),
                        settings(node.get("settings")))
                : null;
        return new Lot(
                new LotId(text(node, "id")),
                text(node, "plant"),
                LotKind.named(text(node, "kind")),
                amount(node.get("quantity")),
                time(node, "made"),
                textOrNull(node, "step"),
                textOrNull(node, "machine"),
                inputs,
                run,
                samples);
    }

    private static Placement placement(JsonNode node) {
        return new Placement(
                node.get("from").get("value").doubleValue(),
                node.get("to").get("value").doubleValue(),
                text(node.get("from"), "unit"),
                node.get("onParentFrom").get("value").doubleValue(),
                node.get("onParentTo").get("value").doubleValue(),
                text(node.get("onParentFrom"), "unit"));
    }

    /** Settings by name: a word, a number, or a value with its unit. */
    public static String settings(Map<String, Setting> settings) {
        return RowJson.write(settingsNode(settings));
    }

    private static ObjectNode settingsNode(Map<String, Setting> settings) {
        ObjectNode node = NODES.objectNode();
        new TreeMap<>(settings).forEach((name, setting) -> {
            String unit = setting.unit();
            if (setting.text() != null) {
                node.put(name, setting.text());
            } else if (unit == null) {
                node.put(name, setting.number());
            } else {
                node.set(name, amount(setting.number(), unit));
            }
        });
        return node;
    }

    /** Settings read back. */
    public static Map<String, Setting> settings(String json) {
        return settings(RowJson.read(json));
    }

    private static Map<String, Setting> settings(JsonNode node) {
        Map<String, Setting> settings = new TreeMap<>();
        node.properties().forEach(entry -> {
            JsonNode value = entry.getValue();
            settings.put(
                    entry.getKey(),
                    value.isTextual()
                            ? Setting.ofText(value.textValue())
                            : value.isNumber()
                                    ? Setting.ofNumber(value.doubleValue(), null)
                                    : Setting.ofNumber(value.get("value").doubleValue(), text(value, "unit")));
        });
        return settings;
    }

    private static ObjectNode amount(double value, String unit) {
        return NODES.objectNode().put("value", value).put("unit", unit);
    }

    private static Amount amount(JsonNode node) {
        return new Amount(node.get("value").doubleValue(), text(node, "unit"));
    }

    private static void put(ObjectNode node, String name, @Nullable Object value) {
        if (value != null) {
            node.put(name, value.toString());
        }
    }

    private static String text(JsonNode node, String name) {
        return node.path(name).textValue();
    }

    private static @Nullable String textOrNull(JsonNode node, String name) {
        return node.hasNonNull(name) ? text(node, name) : null;
    }

    private static OffsetDateTime time(JsonNode node, String name) {
        return OffsetDateTime.parse(text(node, name));
    }

    private static @Nullable OffsetDateTime timeOrNull(JsonNode node, String name) {
        return node.hasNonNull(name) ? time(node, name) : null;
    }
}
