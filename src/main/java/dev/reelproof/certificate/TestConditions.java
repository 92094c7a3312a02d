package dev.reelproof.certificate;

import dev.reelproof.measurement.Equipment;
import dev.reelproof.quantity.Temperature;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The test that a certificate speaks of: its record, conditions and equipment.
 *
 * @param record the record's id
 * @param sourceSha256 digest of the upload, hexadecimal
 * @param temperatureSent the cable's temperature as sent, in {@code temperatureUnit}
 * @param temperatureUnit its unit as sent
 * @param temperature the same temperature
 * @param started when the test began; null when not stated
 * @param finished when it ended
 * @param station the test bay; null when not stated
 * @param technician who tested; null when not stated
 * @param equipment the instruments
 */
public record TestConditions(
        String record,
        String sourceSha256,
        double temperatureSent,
        String temperatureUnit,
        Temperature temperature,
        @Nullable OffsetDateTime started,
        OffsetDateTime finished,
        @Nullable String station,
        @Nullable String technician,
        List<Equipment> equipment) {

    public TestConditions {
        if (record == null || record.isBlank()) {
            throw new IllegalArgumentException("a certificate needs the id of the record that it speaks of");
        }
        Objects.requireNonNull(sourceSha256, "a certificate needs the digest of the upload");
        Objects.requireNonNull(temperatureUnit, "a temperature needs its unit");
        Objects.requireNonNull(temperature, "a certificate needs the cable's temperature");
        Objects.requireNonNull(finished, "a certificate needs the time at which the test was finished");
        equipment = List.copyOf(equipment);
    }
}
