package dev.reelproof.analysis;

import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Where, with what, by whom and when a property of a reel was tested.
 *
 * @param station the bay; absent when not stated
 * @param technician who tested; absent when not stated
 * @param instruments the instruments that measured the property, by their numbers
 * @param finished when the test ended
 */
public record TestOccasion(
        @Nullable String station, @Nullable String technician, Set<String> instruments, OffsetDateTime finished) {

    public TestOccasion {
        Objects.requireNonNull(finished, "a test has a time at which it ended");
        instruments = Set.copyOf(instruments);
    }

    /**
     * The occasion of a test.
     *
     * @param equipment all instruments of the test; those that measured neither the property nor a part of it are left out
     */
    public static TestOccasion of(
            @Nullable String station,
            @Nullable String technician,
            List<Equipment> equipment,
            Property property,
            OffsetDateTime finished) {
        Set<Property> measured =
                Stream.concat(Stream.of(property), property.parts().stream()).collect(Collectors.toSet());
        return new TestOccasion(
                station,
                technician,
                equipment.stream()
                        .filter(one -> one.properties().isEmpty()
                                || one.properties().stream().anyMatch(measured::contains))
                        .map(Equipment::id)
                        .collect(Collectors.toSet()),
                finished);
    }

    private LocalDate day() {
        return finished.withOffsetSameInstant(ZoneOffset.UTC).toLocalDate();
    }

    /** The week of the test: its Monday, in UTC (weeks as ISO 8601 has them). */
    LocalDate week() {
        return day().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    /** What a reel met by being tested so. */
    Set<Exposure> exposures() {
        Set<Exposure> exposures = new TreeSet<>();
        add(exposures, Factor.STATION, station);
        add(exposures, Factor.TECHNICIAN, technician);
        instruments.forEach(instrument -> add(exposures, Factor.INSTRUMENT, instrument));
        add(exposures, Factor.TEST_DAY, day().toString());
        return exposures;
    }

    private static void add(Set<Exposure> exposures, Factor factor, @Nullable String value) {
        if (value != null && !value.isBlank()) {
            exposures.add(new Exposure(factor, value));
        }
    }
}
