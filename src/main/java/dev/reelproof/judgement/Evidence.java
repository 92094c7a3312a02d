package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Finds a result's values by property and subject, always in the order of the subjects, whatever the order of the upload. */
final class Evidence {
    private static final int CONDUCTORS_PER_PAIR = 2;

    private final ReelResult result;
    private final int pairs;
    private final Map<Property, List<Reading>> readings;
    private final Map<Property, List<Sweep>> sweeps;
    private final Map<Integer, Optional<LossCurve>> losses = new HashMap<>();

    /**
     * @param pairs pairs of the core
     */
    Evidence(ReelResult result, int pairs) {
        this.result = result;
        this.pairs = pairs;
        this.readings = inOrder(result.readings(), Reading::property, Reading::subject);
        this.sweeps = inOrder(result.sweeps(), Sweep::property, Sweep::subject);
    }

    /** Sorted property by property: an upload mostly has each in order already. */
    private static <T> Map<Property, List<T>> inOrder(
            List<T> values, Function<T, Property> property, Function<T, Subject> subject) {
        Map<Property, List<T>> byProperty = new EnumMap<>(Property.class);
        for (T value : values) {
            byProperty
                    .computeIfAbsent(property.apply(value), key -> new ArrayList<>())
                    .add(value);
        }
        byProperty.values().forEach(list -> list.sort(Comparator.comparing(subject)));
        return byProperty;
    }

    ReelResult result() {
        return result;
    }

    List<Reading> readings(Property property) {
        return Collections.unmodifiableList(readings.getOrDefault(property, List.of()));
    }

    Optional<Reading> reading(Property property, Subject subject) {
        return find(readings(property), Reading::subject, subject);
    }

    List<Sweep> sweeps(Property property) {
        return Collections.unmodifiableList(sweeps.getOrDefault(property, List.of()));
    }

    Optional<Sweep> sweep(Property property, Subject subject) {
        return find(sweeps(property), Sweep::subject, subject);
    }

    /** What stands under a subject in a list in the order of subjects. */
    static <T> Optional<T> find(List<T> inOrder, Function<T, Subject> subjectOf, Subject subject) {
        int low = 0;
        int high = inOrder.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (subjectOf.apply(inOrder.get(middle)).compareTo(subject) < 0) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low < inOrder.size() && subjectOf.apply(inOrder.get(low)).equals(subject)
                ? Optional.of(inOrder.get(low))
                : Optional.empty();
    }

    /** The measured insertion loss of a pair in dB/m on a grid, NaN where it was not measured. Not to be changed. */
    double[] lossPerMetre(int pair, FrequencyGrid grid) {
        return losses.computeIfAbsent(pair, key -> sweep(Property.INSERTION_LOSS, Subject.ofPair(key))
                        .map(sweep -> new LossCurve(sweep, lengthOf(sweep.unit()))))
                .map(curve -> curve.on(grid))
                .orElseGet(() -> LossCurve.unknown(grid));
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
