package dev.reelproof.limit.file;

import com.fasterxml.jackson.databind.JsonNode;
import dev.reelproof.digest.Sha256;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.LevelSide;
import dev.reelproof.limit.RelativeUncertainty;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Kind;
import dev.reelproof.quantity.ReadingUnit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Reads an uncertainty model file, strictly: YAML, then the published JSON Schema, then the sense of what is written.
 *
 * <p>Every fault names the file, the line and the path, as for limit sets.
 */
public final class UncertaintyModelReader {
    private static final String RESOURCE = "/schemas/uncertainty-model.schema.json";
    private static final double PERCENT_OF_WHOLE = 100;

    private static final String LENGTH_MARKS = "length-marks";
    private static final String TEMPERATURE_COEFFICIENTS = "temperature-coefficients";
    private static final List<String> PARTS = List.of("constant", "proportional", "segments", "noise-floor");

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
        UncertaintyModel model = new Sense(new Entry(root, "", faults)).model(text);
        faults.throwIfAny();
        return Objects.requireNonNull(model, "a model without fault has all its parts");
    }

    /** Reads what the schema has let pass; a value that makes no sense becomes a fault and nothing else. */
    private static final class Sense {
        private final Entry root;
        private final double coverageFactor;

        Sense(Entry root) {
            this.root = root;
            this.coverageFactor = root.number("coverage-factor");
        }

        @Nullable
        UncertaintyModel model(String text) {
            LocalDate effective = root.date("effective");
            double confidence = percent(root, "level-of-confidence");
            if (!(confidence > 0 && confidence < PERCENT_OF_WHOLE)) {
                root.fault("level-of-confidence", "a level of confidence lies between 0 % and 100 %");
            }
            Map<String, Map<Property, InstrumentUncertainty>> classes = classes();
            if (!classes.containsKey(UncertaintyModel.DEFAULT_CLASS)) {
                root.fault(
                        "classes",
                        "there is no class '" + UncertaintyModel.DEFAULT_CLASS
                                + "'; it is what equipment that names no class is taken for");
            }
            InstrumentUncertainty temperature = ambient(root.at("temperature"), "°C");
            InstrumentUncertainty length = ambient(root.at("length"), "m");
            Optional<InstrumentUncertainty> lengthMarks = lengthMarks();
            if (!root.faults().isEmpty() || effective == null) {
                return null;
            }
            return new UncertaintyModel(
                    root.text("id"),
                    root.whole("revision"),
                    effective,
                    root.text("title"),
                    coverageFactor,
                    confidence,
                    temperature,
                    length,
                    lengthMarks,
                    temperatureCoefficients(),
                    classes,
                    Sha256.hex(text),
                    text);
        }

        private InstrumentUncertainty ambient(Entry entry, String unit) {
            return new InstrumentUncertainty(
                    entry.has("constant") ? entry.valueInFixedUnit("constant") : 0,
                    percent(entry, "proportional") / PERCENT_OF_WHOLE,
                    Optional.empty(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    unit,
                    coverageFactor(entry),
                    InstrumentUncertainty.ALL_COMMON,
                    entry.source());
        }

        private Optional<InstrumentUncertainty> lengthMarks() {
            if (!root.has(LENGTH_MARKS)) {
                return Optional.empty();
            }
            Entry marks = root.at(LENGTH_MARKS);
            if (!marks.has("constant") && !marks.has("proportional")) {
                marks.fault("length marks need at least one of constant and proportional");
            }
            return Optional.of(ambient(marks, "m"));
        }

        private Optional<RelativeUncertainty> temperatureCoefficients() {
            if (!root.has(TEMPERATURE_COEFFICIENTS)) {
                return Optional.empty();
            }
            Entry entry = root.at(TEMPERATURE_COEFFICIENTS);
            return Optional.of(new RelativeUncertainty(
                    percent(entry, "proportional") / PERCENT_OF_WHOLE, coverageFactor(entry), entry.source()));
        }

        /** The factor that an entry states, else the model's. */
        private double coverageFactor(Entry entry) {
            return entry.has("coverage-factor") ? entry.number("coverage-factor") : coverageFactor;
        }

        private Map<String, Map<Property, InstrumentUncertainty>> classes() {
            Map<String, Map<Property, InstrumentUncertainty>> classes = new HashMap<>();
            for (Entry entry : root.list("classes")) {
                String name = entry.text("class");
                Map<Property, InstrumentUncertainty> properties = new EnumMap<>(Property.class);
                for (Entry property : entry.list("properties")) {
                    property(property, properties);
                }
                if (classes.putIfAbsent(name, properties) != null) {
                    entry.fault("class", "the class '" + name + "' was given before");
                }
            }
            return classes;
        }

        private void property(Entry entry, Map<Property, InstrumentUncertainty> properties) {
            Property property = entry.attempt("property", () -> Property.named(entry.text("property")));
            if (property == null) {
                return;
            }
            Kind kind = ReadingUnit.parse(property.canonicalUnit()).kind();
            checkFits(entry, property, kind);
            Optional<Bound.Curve> curve = entry.has("segments") ? Optional.ofNullable(curve(entry)) : Optional.empty();
            InstrumentUncertainty uncertainty = new InstrumentUncertainty(
                    entry.number("constant"),
                    percent(entry, "proportional") / PERCENT_OF_WHOLE,
                    curve,
                    kind == Kind.LEVEL
                            ? Optional.of(property == Property.INSERTION_LOSS ? LevelSide.HIGHER : LevelSide.LOWER)
                            : Optional.empty(),
                    kind == Kind.LEVEL && entry.has("noise-floor")
                            ? OptionalDouble.of(entry.number("noise-floor"))
                            : OptionalDouble.empty(),
                    entry.text("unit"),
                    coverageFactor(entry),
                    entry.has("correlation") ? entry.number("correlation") : InstrumentUncertainty.ALL_COMMON,
                    entry.source());
            if (properties.putIfAbsent(property, uncertainty) != null) {
                entry.fault("property", property + " was given before in this class");
            }
        }

        private static void checkFits(Entry entry, Property property, Kind kind) {
            String unit = entry.text("unit");
            if (!unit.equals(property.canonicalUnit())) {
                entry.fault(
                        "unit",
                        "the unit '" + unit + "' does not fit " + property + "; it must be "
                                + property.canonicalUnit());
            }
            if (kind != Kind.LEVEL) {
                entry.refuse(
                        "noise-floor",
                        property + " is not a level in dB; give its least uncertainty as the constant part");
            }
            if (!property.isSweep()) {
                entry.refuse("segments", property + " is not measured against frequency");
            }
            if (PARTS.stream().noneMatch(entry::has)) {
                entry.fault("an entry needs at least one of constant, proportional, segments and noise-floor");
            }
        }

        private static Bound.@Nullable Curve curve(Entry property) {
            List<Segment> segments = new ArrayList<>();
            for (Entry entry : property.list("segments")) {
                Segment segment = CurveReader.rootPolynomial(entry);
                if (segment == null) {
                    return null;
                }
                if (!(segment.at(segment.from()) >= 0 && segment.at(segment.to()) >= 0)) {
                    entry.fault("an uncertainty is never below 0; this one is at an end of its range");
                }
                segments.add(segment);
            }
            return property.attempt("segments", () -> new Bound.Curve(segments));
        }

        /** The number of a text such as {@code 0.2 %}; 0 where the key is absent. */
        private static double percent(Entry entry, String key) {
            return entry.has(key) ? entry.valueInFixedUnit(key) : 0;
        }
    }
}
