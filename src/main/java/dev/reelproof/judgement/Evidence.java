package dev.reelproof.judgement;

import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Finds a result's values by property and subject, always in the order of the subjects, whatever the order of the upload. */
final class Evidence {
    private static final int CONDUCTORS_PER_PAIR = 2;

    private final ReelResult result;
    private final int pairs;
    private final Map<Property, TreeMap<Subject, Reading>> readings = new EnumMap<>(Property.class);
    private final Map<Property, TreeMap<Subject, Sweep>> sweeps = new EnumMap<>(Property.class);

    /**
     * @param pairs pairs of the core
     */
    Evidence(ReelResult result, int pairs) {
        this.result = result;
        this.pairs = pairs;
        for (Reading reading : result.readings()) {
            readings.computeIfAbsent(reading.property(), property -> new TreeMap<>())
                    .put(reading.subject(), reading);
        }
        for (Sweep sweep : result.sweeps()) {
            sweeps.computeIfAbsent(sweep.property(), property -> new TreeMap<>())
                    .put(sweep.subject(), sweep);
        }
    }

    ReelResult result() {
        return result;
    }

    List<Reading> readings(Property property) {
        return List.copyOf(readings.getOrDefault(property, new TreeMap<>()).values());
    }

    Optional<Reading> reading(Property property, Subject subject) {
        return Optional.ofNullable(
                readings.getOrDefault(property, new TreeMap<>()).get(subject));
    }

    List<Sweep> sweeps(Property property) {
        return List.copyOf(sweeps.getOrDefault(property, new TreeMap<>()).values());
    }

    Optional<Sweep> sweep(Property property, Subject subject) {
        return Optional.ofNullable(
                sweeps.getOrDefault(property, new TreeMap<>()).get(subject));
    }

    /** Near-end crosstalk of two pairs at one end: one sweep serves both, so either order will do. */
    Optional<Sweep> sweepOfEitherOrder(Property property, int pair, int partner, End end) {
        Subject subject = Subject.ofCombination(pair, partner).at(end);
        return sweep(property, subject).or(() -> sweep(property, subject.reversed()));
    }

    /** The conductor length that a count belongs to: the one its unit refers it to, else both wires of every pair of the reel. */
    Length conductorLengthOf(ReadingUnit unit) {
        return unit.referredTo()
                .orElseGet(() -> Length.ofMetres(
                        CONDUCTORS_PER_PAIR * pairs * result.length().metres()));
    }

    /** The length that a value belongs to: the one its unit refers it to, else that of the reel. */
    Length lengthOf(ReadingUnit unit) {
        return unit.referredTo().orElse(result.length());
    }
}
