package dev.reelproof.measurement;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.time.OffsetDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One test of one reel, as measured: readings, sweeps, conditions and equipment.
 *
 * @param product the code of the product that the bay says the reel is
 * @param length the length measured
 * @param temperature the temperature of the cable while it was measured
 * @param station the test bay; null when not stated
 * @param technician who tested; null when not stated
 * @param started when the test began; null when not stated
 * @param finished when it ended; the day counts for calibration
 * @param equipment the instruments
 * @param readings the single values, each property and subject at most once
 * @param sweeps the values against frequency, each property and subject at most once
 */
public record ReelResult(
        String product,
        Length length,
        Temperature temperature,
        @Nullable String station,
        @Nullable String technician,
        @Nullable OffsetDateTime started,
        OffsetDateTime finished,
        List<Equipment> equipment,
        List<Reading> readings,
        List<Sweep> sweeps) {

    private record Key(Property property, Subject subject) {}

    public ReelResult {
        if (product == null || product.isBlank()) {
            throw new IllegalArgumentException("a result names the product that was tested");
        }
        if (length == null || temperature == null) {
            throw new IllegalArgumentException("a result needs the length and the temperature of the cable");
        }
        if (finished == null) {
            throw new IllegalArgumentException("a result needs the time at which it was finished");
        }
        if (started != null && started.isAfter(finished)) {
            throw new IllegalArgumentException("the test started " + started + ", after it finished " + finished);
        }
        equipment = List.copyOf(equipment);
        readings = List.copyOf(readings);
        sweeps = List.copyOf(sweeps);
        Set<Key> seen = new HashSet<>();
        readings.forEach(reading -> requireFirst(seen, reading.property(), reading.subject(), reading.origin()));
        sweeps.forEach(sweep -> requireFirst(seen, sweep.property(), sweep.subject(), sweep.origin()));
    }

    /** The same test with other values at another length, such as those that a piece of the reel is expected to have. */
    public ReelResult withValues(Length newLength, List<Reading> newReadings, List<Sweep> newSweeps) {
        return new ReelResult(
                product,
                newLength,
                temperature,
                station,
                technician,
                started,
                finished,
                equipment,
                newReadings,
                newSweeps);
    }

    private static void requireFirst(Set<Key> seen, Property property, Subject subject, Origin origin) {
        if (!seen.add(new Key(property, subject))) {
            throw new IllegalArgumentException(
                    "duplicate reading: " + property + " of " + subject.words() + " again at " + origin.of(0));
        }
    }
}
