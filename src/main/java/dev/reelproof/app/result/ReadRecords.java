package dev.reelproof.app.result;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.intake.Part;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.WorstFirst;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.result.Records;
import jakarta.inject.Singleton;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** Reads records and what is behind their figures: findings, sweeps, originals. */
@Singleton
public class ReadRecords {
    private final Plants plants;
    private final Records records;
    private final JudgedRecords judgedRecords;

    ReadRecords(Plants plants, Records records, JudgedRecords judgedRecords) {
        this.plants = plants;
        this.records = records;
        this.judgedRecords = judgedRecords;
    }

    /**
     * A finding of a record.
     *
     * @param judged the record
     * @param finding the finding
     * @param requirements the ids of all requirements on its property that the record has findings on
     */
    public record ExplainedFinding(JudgedRecord judged, Finding finding, List<String> requirements) {}

    /**
     * Sweeps of a record with what limits them.
     *
     * @param property their property
     * @param sweeps the sweeps, at least one
     * @param drawn the requirement to draw where only one can be; empty when none limits the property along frequency
     * @param requirements all that limit the property along frequency, in the set's order
     */
    public record LimitedSweeps(
            Property property,
            List<CorrectedSweep> sweeps,
            Optional<Requirement> drawn,
            List<Requirement> requirements) {}

    /**
     * A record.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param id its id, as it stands in the address
     * @throws NothingThereException when the plant has none of that id
     */
    public JudgedRecord record(@Nullable String plantNamed, String id) {
        String plant = plants.named(plantNamed, "plant");
        TestRecord record = uuid(id).flatMap(known -> records.byId(plant, known))
                .orElseThrow(() -> new NothingThereException("Plant " + plant + " has no record '" + id + "'."));
        return judgedRecords.of(record);
    }

    private static Optional<UUID> uuid(String text) {
        try {
            return Optional.of(UUID.fromString(text));
        } catch (IllegalArgumentException e) {
            // What is no id of a record names none.
            return Optional.empty();
        }
    }

    /**
     * A finding of a record, by requirement or by property; of several requirements on a property the worst finding.
     *
     * @throws NothingThereException when there is none
     */
    public ExplainedFinding finding(@Nullable String plantNamed, String id, String name) {
        JudgedRecord judged = record(plantNamed, id);
        List<Finding> findings = judged.record().judgement().findings();
        Finding found = findings.stream()
                .filter(finding -> finding.requirement().equals(name))
                .findFirst()
                .or(() -> findings.stream()
                        .filter(finding -> finding.property().id().equals(name))
                        .min(new WorstFirst()))
                .orElseThrow(() -> new NothingThereException(
                        "Record " + judged.record().id() + " has no finding on '" + name + "'; it has findings on "
                                + String.join(", ", requirements(findings, finding -> true)) + "."));
        return new ExplainedFinding(
                judged, found, requirements(findings, finding -> finding.property() == found.property()));
    }

    private static List<String> requirements(List<Finding> findings, Predicate<Finding> of) {
        return findings.stream().filter(of).map(Finding::requirement).toList();
    }

    /**
     * The sweeps of a property of a record.
     *
     * @param of which of them
     * @throws NothingThereException when there is none
     */
    public LimitedSweeps sweeps(
            @Nullable String plantNamed, String id, String propertyNamed, Predicate<CorrectedSweep> of) {
        JudgedRecord judged = record(plantNamed, id);
        TestRecord record = judged.record();
        Property property = property(propertyNamed);
        List<CorrectedSweep> sweeps = records.sweeps(record.plant(), record.id()).stream()
                .filter(sweep -> sweep.property() == property)
                .filter(of)
                .toList();
        if (sweeps.isEmpty()) {
            throw new NothingThereException("Record " + record.id() + " has no such sweep of " + propertyNamed + ".");
        }
        List<Requirement> requirements = judged
                .limitSet()
                .alongFrequency(property, record.product().pairs())
                .stream()
                .filter(requirement -> record.judgement().findings().stream()
                        .anyMatch(finding -> finding.requirement().equals(requirement.id())))
                .toList();
        Optional<Requirement> drawn =
                requirements.stream().min(Comparator.comparing(each -> !(each.domain() instanceof Domain.Range)));
        return new LimitedSweeps(property, sweeps, drawn, requirements);
    }

    private static Property property(String name) {
        try {
            return Property.named(name);
        } catch (IllegalArgumentException e) {
            throw new NothingThereException(Objects.requireNonNull(e.getMessage(), "an unknown property is named"));
        }
    }

    /**
     * A part of a record's upload, as received.
     *
     * @param ordinal its place, from 0
     * @throws NothingThereException when there is none
     */
    public Part original(@Nullable String plantNamed, String id, int ordinal) {
        TestRecord record = record(plantNamed, id).record();
        return records.original(record.plant(), record.id(), ordinal)
                .orElseThrow(() -> new NothingThereException("Record " + record.id() + " has no original " + ordinal
                        + "; it has " + record.originals().size() + ", counted from 0."));
    }
}
