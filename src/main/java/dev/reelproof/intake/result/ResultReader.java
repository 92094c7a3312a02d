package dev.reelproof.intake.result;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.SentObject;
import dev.reelproof.intake.Words;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Reads an upload into what was measured: the JSON document of the contract, and the CSV and Touchstone files
 * beside it, each by itself or in a ZIP file.
 *
 * <p>Strict: an unknown key, a value twice, a unit that does not fit is a fault, and an upload with a fault is refused whole.
 */
public final class ResultReader {
    private static final int LONGEST_NAME = SentObject.LONGEST_NAME;
    private static final Pattern EQUIPMENT_CLASS = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

    private static final int MOST_SAMPLES = Product.MOST_PAIRS;
    private static final Duration CLOCKS_MAY_DIFFER = Duration.ofMinutes(5);

    private final OffsetDateTime received;
    private final Faults faults = new Faults();
    private final Measurements measurements = new Measurements(faults);
    private final List<StatedReel> reels = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();

    private ResultReader(OffsetDateTime received) {
        this.received = received;
    }

    /**
     * The result that an upload holds.
     *
     * @param upload what was sent
     * @param received when it was; stands in for a missing time of finishing
     * @throws IntakeException MALFORMED when a part cannot be read, CONTENT with every fault found otherwise; {@code where} is
     *     a JSON pointer into the document or {@code file:line}
     */
    public static ReadResult read(Upload upload, OffsetDateTime received) {
        return new ResultReader(received).read(upload);
    }

    private ReadResult read(Upload upload) {
        SentObject root = SentObject.read(Part.RESULT, upload.document().bytes(), faults)
                .allow(
                        "reel",
                        SentTest.RETEST_REASON,
                        "product",
                        "length",
                        "temperature",
                        "station",
                        "technician",
                        "started",
                        "finished",
                        "equipment",
                        "grids",
                        "readings",
                        "sweeps",
                        "networks")
                .require("product", "length", "temperature");
        root.text("reel", LONGEST_NAME).ifPresent(number -> reels.add(new StatedReel(root.pointer("reel"), number)));
        Optional<String> retestReason = root.text(SentTest.RETEST_REASON, SentTest.LONGEST_REASON);
        Optional<String> product = root.identifier("product");
        Optional<Length> length = root.quantity("length", Length::of);
        Optional<Temperature> temperature = root.quantity("temperature", Temperature::of);
        Optional<String> station = root.text("station", LONGEST_NAME);
        Optional<String> technician = root.text("technician", LONGEST_NAME);
        Optional<OffsetDateTime> started = root.time("started");
        OffsetDateTime finished = finished(root, started);
        List<Equipment> equipment = equipment(root);
        readings(root);
        sweeps(root);
        NetworkFiles networks = NetworkFiles.of(root);
        networks.readAll(upload.files(), part -> ResultCsv.read(part, measurements, reels, faults));
        if (faults.count() == 0
                && measurements.readings().isEmpty()
                && measurements.sweeps().isEmpty()
                && networks.read().isEmpty()) {
            root.fault("nothing was measured; give 'readings', 'sweeps', 'networks' or a CSV file beside the document");
        }
        faults.refuseIfAny();
        return new ReadResult(
                new ReelResult(
                        product.orElseThrow(),
                        length.orElseThrow(),
                        temperature.orElseThrow(),
                        station.orElse(null),
                        technician.orElse(null),
                        started.orElse(null),
                        finished,
                        equipment,
                        measurements.readings(),
                        measurements.sweeps()),
                networks.read(),
                warnings,
                reels,
                retestReason.orElse(null));
    }

    private OffsetDateTime finished(SentObject root, Optional<OffsetDateTime> started) {
        Optional<OffsetDateTime> stated = root.time("finished");
        if (!root.has("finished")) {
            warnings.add("The time of finishing was not stated; the time of receipt, " + received + ", is used.");
        }
        OffsetDateTime finished = stated.orElse(received);
        if (started.isPresent() && started.get().isAfter(finished)) {
            root.fault(
                    "started",
                    "the test started " + started.get() + ", after it "
                            + (stated.isPresent() ? "finished " : "was received ") + finished);
        }
        if (finished.isAfter(received.plus(CLOCKS_MAY_DIFFER))) {
            warnings.add("The test finished " + finished + ", after it was received, " + received
                    + "; check the clock of the bay. Among the tests of the reel it counts as of its receipt.");
        }
        return finished;
    }

    private List<Equipment> equipment(SentObject root) {
        List<Equipment> equipment = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        for (SentObject sent : root.objects("equipment")) {
            sent.allow("id", "calibrationDue", "properties", "class").require("id");
            Optional<String> id = sent.text("id", LONGEST_NAME);
            Optional<LocalDate> due = sent.date("calibrationDue");
            Set<Property> properties = EnumSet.noneOf(Property.class);
            List<String> names = sent.texts("properties", LONGEST_NAME);
            for (String name : names) {
                faults.attempt(sent.pointer("properties"), () -> Measurements.property(name))
                        .ifPresent(properties::add);
            }
            if (sent.has("properties") && names.isEmpty()) {
                sent.fault("properties", "names no property; leave it out when the instrument measured all");
            }
            if (id.isPresent() && !ids.add(id.get())) {
                sent.fault("id", "instrument " + Words.quoted(id.get()) + " stands twice; give it once");
            }
            Optional<String> equipmentClass = sent.text("class", LONGEST_NAME);
            equipmentClass
                    .filter(text -> !EQUIPMENT_CLASS.matcher(text).matches())
                    .ifPresent(text -> sent.fault(
                            "class",
                            "must be a class of the uncertainty model, in small letters, figures and hyphens such as default,"
                                    + " not " + Words.quoted(text)));
            id.ifPresent(text ->
                    equipment.add(new Equipment(text, due.orElse(null), properties, equipmentClass.orElse(null))));
        }
        if (equipment.isEmpty()) {
            warnings.add("No equipment was stated; whether its calibration was in date is not known.");
        }
        return equipment;
    }

    private void readings(SentObject root) {
        for (SentObject sent : root.objects("readings")) {
            sent.allow("property", "pair", "partner", "conductor", "end", "sample", "frequency", "value", "unit")
                    .require("property", "value", "unit");
            Optional<Property> property = property(sent);
            Optional<Subject> subject = subject(sent);
            Optional<Double> value = sent.number("value");
            Optional<ReadingUnit> unit = property.flatMap(known -> unit(sent, known));
            Optional<FrequencyGrid> frequency = sent.quantity(
                    "frequency", (number, text) -> FrequencyGrid.ofMegahertz(FrequencyGrid.megahertz(number, text)));
            if (property.isEmpty() || subject.isEmpty() || value.isEmpty() || unit.isEmpty()) {
                continue;
            }
            Origin origin = new Origin.JsonValue(sent.pointer());
            if (!sent.has("frequency")) {
                measurements.addReading(property.get(), subject.get(), value.get(), unit.get(), origin);
            } else if (!property.get().isSweep()) {
                sent.fault("frequency", property.get() + " is not measured against frequency; leave 'frequency' out");
            } else if (frequency.isPresent()) {
                measurements.addSweep(
                        property.get(), subject.get(), frequency.get(), new double[] {value.get()}, unit.get(), origin);
            }
        }
    }

    private void sweeps(SentObject root) {
        Map<String, Optional<FrequencyGrid>> grids = grids(root);
        Set<String> unused = new LinkedHashSet<>(grids.keySet());
        for (SentObject sent : root.objects("sweeps")) {
            sent.allow("property", "pair", "partner", "end", "grid", "unit", "values")
                    .require("property", "grid", "unit", "values");
            Optional<Property> property = property(sent);
            Optional<Subject> subject = subject(sent);
            Optional<ReadingUnit> unit = property.flatMap(known -> unit(sent, known));
            Optional<double[]> values = sent.numbers("values");
            Optional<FrequencyGrid> grid = sent.text("grid", LONGEST_NAME).flatMap(name -> {
                if (!grids.containsKey(name)) {
                    sent.fault(
                            "grid",
                            "unknown grid " + Words.quoted(name)
                                    + (grids.isEmpty()
                                            ? "; 'grids' defines none"
                                            : Words.suggestion(name, grids.keySet())));
                    return Optional.empty();
                }
                unused.remove(name);
                return grids.get(name);
            });
            if (grid.isPresent()
                    && values.isPresent()
                    && values.get().length != grid.get().size()) {
                sent.fault(
                        "values",
                        "has " + values.get().length + " values for the "
                                + grid.get().size() + " frequencies of its grid; there must be one a frequency");
                continue;
            }
            if (property.isPresent()
                    && subject.isPresent()
                    && unit.isPresent()
                    && values.isPresent()
                    && grid.isPresent()) {
                measurements.addSweep(
                        property.get(),
                        subject.get(),
                        grid.get(),
                        values.get(),
                        unit.get(),
                        new Origin.JsonArray(sent.pointer("values")));
            }
        }
        unused.forEach(name -> warnings.add("The grid " + Words.quoted(name) + " is not used by any sweep."));
    }

    /** The grids by name; a grid with a fault is empty, so that a sweep on it is not told that it is unknown. */
    private Map<String, Optional<FrequencyGrid>> grids(SentObject root) {
        Map<String, Optional<FrequencyGrid>> grids = new LinkedHashMap<>();
        root.object("grids").ifPresent(all -> {
            for (String name : all.keys()) {
                grids.put(name, all.object(name).flatMap(this::grid));
            }
        });
        return grids;
    }

    private Optional<FrequencyGrid> grid(SentObject sent) {
        sent.allow("unit", "values").require("unit", "values");
        Optional<String> unit = sent.text("unit", SentObject.LONGEST_UNIT);
        Optional<Double> factor =
                unit.flatMap(text -> faults.attempt(sent.pointer("unit"), () -> FrequencyGrid.megahertz(1, text)));
        Optional<double[]> values = sent.numbers("values");
        if (factor.isEmpty() || values.isEmpty()) {
            return Optional.empty();
        }
        double[] numbers = values.get();
        if (numbers.length == 0) {
            sent.fault("values", "has no frequency; give at least one");
            return Optional.empty();
        }
        double[] megahertz = new double[numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            String where = sent.pointer("values") + "/" + i;
            megahertz[i] = numbers[i] * factor.get();
            if (!(megahertz[i] > 0 && Double.isFinite(megahertz[i]))) {
                faults.add(where, "frequency must be positive and finite, not " + numbers[i] + " " + unit.get());
                return Optional.empty();
            }
            if (i > 0 && !(megahertz[i] > megahertz[i - 1])) {
                faults.add(
                        where,
                        "frequency " + numbers[i] + " " + unit.get() + " is not above the one before (" + numbers[i - 1]
                                + "); the frequencies of a grid must ascend without repeats");
                return Optional.empty();
            }
        }
        return Optional.of(measurements.shared(FrequencyGrid.ofMegahertz(megahertz)));
    }

    private Optional<Property> property(SentObject sent) {
        return sent.text("property", LONGEST_NAME)
                .flatMap(text -> faults.attempt(sent.pointer("property"), () -> Measurements.property(text)));
    }

    private Optional<ReadingUnit> unit(SentObject sent, Property property) {
        return sent.text("unit", SentObject.LONGEST_UNIT)
                .flatMap(text -> faults.attempt(sent.pointer("unit"), () -> measurements.unit(property, text)));
    }

    private Optional<Subject> subject(SentObject sent) {
        int before = faults.count();
        Integer pair = sent.whole("pair", 1, Product.MOST_PAIRS).orElse(null);
        Integer partner = sent.whole("partner", 1, Product.MOST_PAIRS).orElse(null);
        Integer sample = sent.whole("sample", 1, MOST_SAMPLES).orElse(null);
        Conductor conductor = sent.text("conductor", LONGEST_NAME)
                .flatMap(text -> faults.attempt(sent.pointer("conductor"), () -> Measurements.conductor(text)))
                .orElse(null);
        End end = sent.text("end", LONGEST_NAME)
                .flatMap(text -> faults.attempt(sent.pointer("end"), () -> Measurements.end(text)))
                .orElse(null);
        if (faults.count() > before) {
            return Optional.empty();
        }
        return faults.attempt(sent.pointer(), () -> new Subject(pair, partner, conductor, end, sample));
    }
}
