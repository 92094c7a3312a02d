package dev.reelproof.intake.result;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import dev.reelproof.intake.Words;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The readings and sweeps of one upload, gathered from the document and its files; each property and subject once. */
final class Measurements {
    private static final List<String> PROPERTY_NAMES =
            Arrays.stream(Property.values()).map(Property::id).toList();

    private record Key(Property property, Subject subject) {}

    private final Faults faults;
    private final List<Reading> readings = new ArrayList<>();
    private final List<Sweep> sweeps = new ArrayList<>();
    private final Map<Key, Origin> given = new HashMap<>();
    private final Map<FrequencyGrid, FrequencyGrid> grids = new HashMap<>();
    private final Map<String, ReadingUnit> units = new HashMap<>();

    Measurements(Faults faults) {
        this.faults = faults;
    }

    List<Reading> readings() {
        return readings;
    }

    List<Sweep> sweeps() {
        return sweeps;
    }

    /** The property of that name, or {@link IllegalArgumentException}. */
    static Property property(String text) {
        if (!PROPERTY_NAMES.contains(text)) {
            throw new IllegalArgumentException(
                    "unknown property " + Words.quoted(text) + Words.suggestion(text, PROPERTY_NAMES));
        }
        return Property.named(text);
    }

    /** The conductor of that letter, or {@link IllegalArgumentException}. */
    static Conductor conductor(String text) {
        return Arrays.stream(Conductor.values())
                .filter(conductor -> conductor.letter().equals(text))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalArgumentException("conductor must be 'a' or 'b', not " + Words.quoted(text)));
    }

    /** The end of that word, or {@link IllegalArgumentException}. */
    static End end(String text) {
        return Arrays.stream(End.values())
                .filter(end -> end.word().equals(text))
                .findFirst()
                .orElseThrow(
                        () -> new IllegalArgumentException("end must be 'near' or 'far', not " + Words.quoted(text)));
    }

    /** The unit of that text when it fits the property, else {@link IllegalArgumentException}. */
    ReadingUnit unit(Property property, String text) {
        if (text.length() > SentObject.LONGEST_UNIT) {
            throw new IllegalArgumentException("unknown unit " + Words.quoted(text));
        }
        ReadingUnit unit = units.computeIfAbsent(text, ReadingUnit::parse);
        ValueRules.requireUnit(property, unit);
        return unit;
    }

    /** The one instance of grids that are equal, so that sweeps on equal frequencies share it. */
    FrequencyGrid shared(FrequencyGrid grid) {
        return grids.computeIfAbsent(grid, same -> same);
    }

    /** Takes a single value in; notes a fault at its origin when it does not fit or was given before. */
    void addReading(Property property, Subject subject, double sent, ReadingUnit unit, Origin origin) {
        Optional<Reading> reading = faults.attempt(origin.of(0), () -> {
            ValueRules.requireValue(property, sent, unit);
            return Reading.of(property, subject, sent, unit, origin);
        });
        if (reading.isPresent() && isFirst(property, subject, origin)) {
            readings.add(reading.get());
        }
    }

    /** Takes values against frequency in; notes a fault for each that cannot be, or one when the whole does not fit. */
    void addSweep(
            Property property, Subject subject, FrequencyGrid grid, double[] sent, ReadingUnit unit, Origin origin) {
        int before = faults.count();
        Optional<Sweep> sweep = faults.attempt(
                origin instanceof Origin.JsonArray array ? array.pointer() : origin.of(0),
                () -> Sweep.of(property, subject, shared(grid), sent, unit, origin));
        if (sweep.isPresent()) {
            for (int i = 0; i < sent.length; i++) {
                try {
                    ValueRules.requireValue(property, sent[i], unit);
                } catch (IllegalArgumentException e) {
                    faults.add(origin.of(i), String.valueOf(e.getMessage()));
                }
            }
        }
        if (faults.count() == before && isFirst(property, subject, origin)) {
            sweeps.add(sweep.orElseThrow());
        }
    }

    private boolean isFirst(Property property, Subject subject, Origin origin) {
        Origin first = given.putIfAbsent(new Key(property, subject), origin);
        if (first != null) {
            faults.add(
                    origin.of(0),
                    "duplicate reading: " + property + " of " + subject.words() + " was given already at " + first.of(0)
                            + "; give it once");
        }
        return first == null;
    }
}
