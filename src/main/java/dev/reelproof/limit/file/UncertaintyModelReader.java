package dev.reelproof.limit.file;

import com.fasterxml.jackson.databind.JsonNode;
import dev.reelproof.digest.Sha256;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.LevelSide;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Kind;
import dev.reelproof.quantity.ReadingUnit;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Reads an uncertainty model file, strictly: YAML, then the published JSON Schema, then the sense of what is written.
 *
 * <p>Every fault names the file, the line and the path, as for limit sets.
 */
public final class UncertaintyModelReader {
    private static final String RESOURCE = "/schemas/uncertainty-model.schema.json";
    private static final double PERCENT = 100;

    private final LimitSetSchema schema = new LimitSetSchema(RESOURCE);

    /**
     * The model of a file.
     *
     * @param fileName for messages, such as {@code limits/uncertainty/test-bay.yaml}
     * @param text the whole file
     * @throws LimitSetException with every fault found
     */
    public UncertaintyModel read(String fileName, String text) {
        FaultList faults = new FaultList(fileName);
        JsonNode root = YamlDocument.parse(text, "uncertainty model", faults).root();
        if (faults.isEmpty()) {
            schema.check(root, faults);
        }
        faults.throwIfAny();
        UncertaintyModel model = new Sense(faults).model(root, text);
        faults.throwIfAny();
        return model;
    }

    /** Reads what the schema has let pass; a value that makes no sense becomes a fault and null. */
    private final class Sense {
        private final FaultList faults;
        private double coverageFactor;

        Sense(FaultList faults) {
            this.faults = faults;
        }

        UncertaintyModel model(JsonNode root, String text) {
            coverageFactor = root.path("coverage-factor").asDouble();
            LocalDate effective = date(root.path("effective").asText());
            double confidence = percent(root.path("level-of-confidence"));
            if (!(confidence > 0 && confidence < PERCENT)) {
                faults.add("/level-of-confidence", "a level of confidence lies between 0 % and 100 %");
            }
            Map<String, Map<Property, InstrumentUncertainty>> classes = classes(root.path("classes"));
            if (!classes.containsKey(UncertaintyModel.DEFAULT_CLASS)) {
                faults.add(
                        "/classes",
                        "there is no class '" + UncertaintyModel.DEFAULT_CLASS
                                + "'; it is what equipment that names no class is taken for");
            }
            InstrumentUncertainty temperature = ambient(root.path("temperature"), "°C");
            InstrumentUncertainty length = ambient(root.path("length"), "m");
            if (!faults.isEmpty()) {
                return null;
            }
            return new UncertaintyModel(
                    root.path("id").asText(),
                    root.path("revision").asInt(),
                    effective,
                    root.path("title").asText(),
                    coverageFactor,
                    confidence,
                    temperature,
                    length,
                    classes,
                    Sha256.hex(text),
                    text);
        }

        private InstrumentUncertainty ambient(JsonNode entry, String unit) {
            return new InstrumentUncertainty(
                    LimitSetReader.quantity(entry.path("constant").asText("0 " + unit), (value, text) -> value),
                    percent(entry.path("proportional")) / PERCENT,
                    Optional.empty(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    unit,
                    entry.path("coverage-factor").asDouble(coverageFactor),
                    LimitSetReader.source(entry));
        }

        private Map<String, Map<Property, InstrumentUncertainty>> classes(JsonNode entries) {
            Map<String, Map<Property, InstrumentUncertainty>> classes = new HashMap<>();
            for (int i = 0; i < entries.size(); i++) {
                String place = "/classes/" + i;
                String name = entries.get(i).path("class").asText();
                Map<Property, InstrumentUncertainty> properties = new EnumMap<>(Property.class);
                JsonNode list = entries.get(i).path("properties");
                for (int j = 0; j < list.size(); j++) {
                    property(list.get(j), place + "/properties/" + j, properties);
                }
                if (classes.putIfAbsent(name, properties) != null) {
                    faults.add(place + "/class", "the class '" + name + "' was given before");
                }
            }
            return classes;
        }

        private void property(JsonNode entry, String place, Map<Property, InstrumentUncertainty> properties) {
            Property property = faults.attempt(
                    place + "/property",
                    () -> Property.named(entry.path("property").asText()));
            if (property == null) {
                return;
            }
            String unit = entry.path("unit").asText();
            if (!unit.equals(property.canonicalUnit())) {
                faults.add(
                        place + "/unit",
                        "the unit '" + unit + "' does not fit " + property + "; it must be "
                                + property.canonicalUnit());
            }
            Kind kind = ReadingUnit.parse(property.canonicalUnit()).kind();
            if (entry.has("noise-floor") && kind != Kind.LEVEL) {
                faults.add(
                        place + "/noise-floor",
                        property + " is not a level in dB; give its least uncertainty as the constant part");
            }
            if (entry.has("segments") && !property.isSweep()) {
                faults.add(place + "/segments", property + " is not measured against frequency");
            }
            if (!(entry.has("constant")
                    || entry.has("proportional")
                    || entry.has("segments")
                    || entry.has("noise-floor"))) {
                faults.add(place, "an entry needs at least one of constant, proportional, segments and noise-floor");
            }
            Optional<Bound.Curve> curve = entry.has("segments")
                    ? Optional.ofNullable(curve(entry.path("segments"), place + "/segments"))
                    : Optional.empty();
            InstrumentUncertainty uncertainty = new InstrumentUncertainty(
                    entry.path("constant").asDouble(0),
                    percent(entry.path("proportional")) / PERCENT,
                    curve,
                    kind == Kind.LEVEL
                            ? Optional.of(property == Property.INSERTION_LOSS ? LevelSide.HIGHER : LevelSide.LOWER)
                            : Optional.empty(),
                    kind == Kind.LEVEL && entry.has("noise-floor")
                            ? OptionalDouble.of(entry.path("noise-floor").asDouble())
                            : OptionalDouble.empty(),
                    unit,
                    entry.path("coverage-factor").asDouble(coverageFactor),
                    LimitSetReader.source(entry));
            if (properties.putIfAbsent(property, uncertainty) != null) {
                faults.add(place + "/property", property + " was given before in this class");
            }
        }

        private Bound.Curve curve(JsonNode entries, String place) {
            List<Segment> segments = new ArrayList<>();
            for (int i = 0; i < entries.size(); i++) {
                JsonNode entry = entries.get(i);
                Segment segment = faults.attempt(
                        place + "/" + i,
                        () -> new Segment.RootPolynomial(
                                frequency(entry.path("from")),
                                frequency(entry.path("to")),
                                entry.path("constant").asDouble(),
                                entry.path("sqrt").asDouble(),
                                entry.path("linear").asDouble(),
                                entry.path("inverse-sqrt").asDouble()));
                if (segment == null) {
                    return null;
                }
                if (!(segment.at(segment.from()) >= 0 && segment.at(segment.to()) >= 0)) {
                    faults.add(place + "/" + i, "an uncertainty is never below 0; this one is at an end of its range");
                }
                segments.add(segment);
            }
            return faults.attempt(place, () -> new Bound.Curve(segments));
        }

        private LocalDate date(String text) {
            try {
                return LocalDate.parse(text);
            } catch (DateTimeException e) {
                faults.add("/effective", "'" + text + "' is not a day of the calendar");
                return null;
            }
        }

        private static double frequency(JsonNode text) {
            return LimitSetReader.quantity(text.asText(), FrequencyGrid::megahertz);
        }

        /** The number of a text such as {@code 0.2 %}; 0 when it is not there. */
        private static double percent(JsonNode text) {
            return text.isMissingNode() ? 0 : LimitSetReader.quantity(text.asText(), (value, unit) -> value);
        }
    }
}
