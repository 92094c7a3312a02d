package dev.reelproof.record.concession;

import dev.reelproof.digest.Sha256;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import dev.reelproof.record.TestRecord;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;

/** Records and concessions of an invented reel. */
public final class ConcessionSamples {
    public static final OffsetDateTime TESTED = OffsetDateTime.parse("2026-03-02T14:05:00Z");
    public static final OffsetDateTime APPROVED = TESTED.plusDays(2);
    public static final UUID RECORD = UUID.fromString("0190163d-8694-739b-aea5-966c26f8ad91");
    public static final UUID ANOTHER = UUID.fromString("0190163d-8694-739b-aea5-966c26f8ad92");

    private static final String DIGEST = Sha256.hex("some upload");
    private static final DecisionRule FOUR_OUTCOMES = new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1);

    private ConcessionSamples() {}

    public static Product product(String id, int pairs, String gauge) {
        return new Product(id, "invented", "some-set", pairs, gauge, null, Map.of(), List.of());
    }

    public static Judgement judgement(Outcome... outcomes) {
        Property[] properties = {Property.CONDUCTOR_RESISTANCE, Property.MUTUAL_CAPACITANCE, Property.RETURN_LOSS};
        List<Finding> findings = IntStream.range(0, outcomes.length)
                .mapToObj(i -> finding(properties[i], outcomes[i]))
                .toList();
        return new Judgement(
                "some-set", 1, DIGEST, "test", Verdict.of(Arrays.asList(outcomes)), findings, List.of(), null);
    }

    private static Finding finding(Property property, Outcome outcome) {
        boolean tested = outcome != Outcome.NOT_TESTED;
        String unit = property.canonicalUnit();
        Figure figure = new Figure(Subject.ofReel(), null, null, 1.0, unit, 1, 1, 1, 0, unit, false, null, List.of());
        return new Finding(
                property.id(),
                property,
                outcome,
                tested ? null : "no data",
                tested ? figure : null,
                1,
                List.of(),
                FOUR_OUTCOMES);
    }

    /** A record of reel R-1. */
    public static TestRecord record(
            UUID id, Judgement judgement, double metres, OffsetDateTime finished, String product) {
        return new TestRecord(
                "north",
                id,
                finished.plusMinutes(1),
                "R-1",
                product(product, 4, "23 AWG"),
                1,
                judgement,
                Length.ofMetres(metres),
                Temperature.ofCelsius(20),
                null,
                null,
                null,
                finished,
                List.of(),
                List.of(),
                DIGEST,
                List.of(),
                null);
    }

    /** The record that is conceded: of product P-1, 305 m. */
    public static TestRecord record(Outcome... outcomes) {
        return record(RECORD, judgement(outcomes), 305, TESTED, "P-1");
    }

    /** A concession of that record that anna asked for and nobody decided. */
    public static Concession asked(Terms terms) {
        return new Concession(
                12,
                "R-1",
                RECORD,
                terms,
                List.of("conductor-resistance"),
                new Concession.Registration("P-1", 305, "m"),
                "for a trial at our own yard",
                new Concession.Person("anna", "engineer"),
                TESTED.plusDays(1),
                null);
    }

    /** The same, approved by ben. */
    public static Concession approved(Terms terms) {
        return asked(terms)
                .decided(new Concession.Decision(
                        true,
                        new Concession.Person("ben", "quality-manager"),
                        APPROVED,
                        "agreed",
                        terms instanceof Terms.Regrade ? ANOTHER : null));
    }
}
