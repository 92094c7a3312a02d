package dev.reelproof.measurement;

import java.time.LocalDate;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * An instrument that took part in a test.
 *
 * @param id the plant's number of the instrument
 * @param calibrationDue the last day on which its calibration holds; null when it needs none
 * @param properties the properties it measured; empty for all
 * @param equipmentClass the class by which an uncertainty model knows it; null when not stated
 */
public record Equipment(
        String id, @Nullable LocalDate calibrationDue, Set<Property> properties, @Nullable String equipmentClass) {

    public Equipment {
        if (id == null || id.isBlank()) {
            throw new IllegalArgumentException("equipment needs an id");
        }
        if (equipmentClass != null && equipmentClass.isBlank()) {
            throw new IllegalArgumentException("equipment " + id + " states a class without naming it");
        }
        properties = Set.copyOf(properties);
    }

    /** An instrument whose class is not stated. */
    public Equipment(String id, @Nullable LocalDate calibrationDue, Set<Property> properties) {
        this(id, calibrationDue, properties, null);
    }

    /** Whether its calibration has lapsed on a day and it measured the property. */
    public boolean lapsedFor(Property property, LocalDate day) {
        return calibrationDue != null
                && day.isAfter(calibrationDue)
                && (properties.isEmpty() || properties.contains(property));
    }
}
