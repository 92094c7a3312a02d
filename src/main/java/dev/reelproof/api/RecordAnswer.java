package dev.reelproof.api;

import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.store.StoredRecord;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;

/** A record, as the HTTP contract has it. */
record RecordAnswer(
        UUID id,
        String plant,
        String reel,
        String product,
        int attempt,
        LimitSetName limitSet,
        String engine,
        String sourceSha256,
        OffsetDateTime received,
        Quantity length,
        Quantity temperature,
        String station,
        String technician,
        OffsetDateTime started,
        OffsetDateTime finished,
        List<Instrument> equipment,
        String verdict,
        List<String> warnings,
        List<FindingAnswer> findings,
        List<Original> original) {

    /** Which revision of a limit set. */
    record LimitSetName(String id, int revision, String sha256) {}

    /** An instrument that took part. */
    record Instrument(String id, LocalDate calibrationDue, List<String> properties) {
        static Instrument of(Equipment equipment) {
            return new Instrument(
                    equipment.id(),
                    equipment.calibrationDue(),
                    equipment.properties().stream()
                            .sorted()
                            .map(Property::tradeName)
                            .toList());
        }
    }

    /** A part of the upload; its place in the list is the number under which it is served. */
    record Original(String name, String mediaType, String sha256, int bytes) {}

    static RecordAnswer of(StoredRecord record, LimitSet limitSet) {
        return new RecordAnswer(
                record.id(),
                record.plant(),
                record.reel(),
                record.product().id(),
                record.attempt(),
                new LimitSetName(
                        record.judgement().limitSet(),
                        record.judgement().revision(),
                        record.judgement().limitSetSha256()),
                record.judgement().engine(),
                record.sourceSha256(),
                record.received(),
                new Quantity(record.length().metres(), "m"),
                new Quantity(record.temperature().celsius(), "°C"),
                record.station(),
                record.technician(),
                record.started(),
                record.finished(),
                record.equipment().stream().map(Instrument::of).toList(),
                record.judgement().verdict().word(),
                record.warnings(),
                record.judgement().findings().stream()
                        .map(finding -> FindingAnswer.of(finding, limitSet, record.product()))
                        .toList(),
                record.originals().stream()
                        .map(part -> new Original(part.name(), part.mediaType(), part.sha256(), part.size()))
                        .toList());
    }
}
