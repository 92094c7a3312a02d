package dev.reelproof.wording;

import static dev.reelproof.wording.Findings.atLeast;
import static dev.reelproof.wording.Findings.atMost;
import static dev.reelproof.wording.Findings.flatAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Uncertainty;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FindingWordsTest {
    private static final Domain NONE = new Domain.NoFrequency();
    private static final Requirement RETURN_LOSS = RequirementBuilder.of(
                    Property.RETURN_LOSS, flatAtLeast(16.79), new Domain.Range(1, 500), "dB")
            .build();
    private static final Requirement RESISTANCE = RequirementBuilder.of(
                    Property.CONDUCTOR_RESISTANCE, atMost(9.38, 2), NONE, "ohm/100 m")
            .build();
    private static final Requirement SPARKS = RequirementBuilder.of(Property.SPARK_FAULTS, atMost(0, 0), NONE, "count")
            .build();

    private static FindingWords words(
            Requirement requirement, Outcome outcome, Subject subject, Double megahertz, double value, double limit) {
        boolean upper = requirement.limit().upper().isPresent();
        return words(
                requirement, outcome, subject, megahertz, value, limit, upper ? limit - value : value - limit, null);
    }

    private static FindingWords words(
            Requirement requirement,
            Outcome outcome,
            Subject subject,
            Double megahertz,
            double value,
            double limit,
            double margin,
            Uncertainty uncertainty) {
        Figure figure = Findings.figure(requirement, subject, megahertz, value, limit, margin, uncertainty);
        return Wording.english().finding(Findings.finding(requirement, outcome, figure), requirement);
    }

    private static FindingWords notTested(Requirement requirement, Obstacles obstacles) {
        return Wording.english()
                .finding(
                        new Finding(
                                requirement.id(),
                                requirement.property(),
                                Outcome.NOT_TESTED,
                                "as the record says",
                                obstacles,
                                null,
                                0,
                                List.of(),
                                DecisionRule.SIMPLE_ACCEPTANCE,
                                null),
                        requirement);
    }

    @Test
    void aFailureSaysByHowMuchAndWhere() {
        FindingWords words = words(RETURN_LOSS, Outcome.FAIL, Subject.ofPair(3).at(End.NEAR), 378.0, 12.3401, 16.79);
        assertEquals("Return loss", words.title());
        assertEquals("how little is reflected to the sender", words.plain());
        assertEquals("fail", words.outcome());
        assertEquals("✕", words.sign());
        assertEquals("pair 3, near end, 378 MHz", words.place());
        assertEquals("−4.45", words.printed().margin());
        assertEquals("at least", words.printed().sense());
        assertEquals("≥", words.printed().senseSign());
        assertEquals(
                "12.34 dB at pair 3, near end, 378 MHz; the limit is at least 16.79 dB, missed by 4.45 dB",
                words.sentence());
        assertEquals("Return loss, pair 3, near end: 4.45 dB short at 378 MHz", words.shortfall());
        assertNull(words.caution());
    }

    @Test
    void aFailureOfACountHasNeitherUnitNorPlace() {
        FindingWords words = words(SPARKS, Outcome.FAIL, Subject.ofReel(), null, 2, 0);
        assertEquals("2; the limit is at most 0, missed by 2", words.sentence());
        assertEquals("Spark faults: 2 too much", words.shortfall());
        assertEquals("reel", words.place());
        assertEquals("High voltage: follow local codes and licensed practice", words.caution());
    }

    @Test
    void aFailureByLessThanTheDecimalsNeverReadsAsAPass() {
        FindingWords words = words(RESISTANCE, Outcome.FAIL, Subject.ofPair(1), null, 9.3800002, 9.38);
        assertEquals("9.3800002", words.printed().value());
        assertEquals("9.3800000", words.printed().limit());
        assertEquals("−0.0000002", words.printed().margin());
        FindingWords beyondAll = words(RESISTANCE, Outcome.FAIL, Subject.ofPair(1), null, 9.38, 9.38, -1e-12, null);
        assertEquals("9.380000000", beyondAll.printed().value());
        assertEquals(
                "9.380000000 ohm/100 m at pair 1; the limit is at most 9.380000000 ohm/100 m, missed by 0.000000000 ohm/100 m",
                beyondAll.sentence());
    }

    @Test
    void aGuardedOutcomeSaysWhyItIsNotPlain() {
        Uncertainty known = new Uncertainty(0.0256, 2, 0.977);
        Requirement guarded = RequirementBuilder.like(RESISTANCE)
                .decisionRule(new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1))
                .build();
        FindingWords pass = words(guarded, Outcome.CONDITIONAL_PASS, Subject.ofPair(1), null, 9.36, 9.38, 0.02, known);
        assertEquals(
                "9.360 ohm/100 m at pair 1; the limit is at most 9.380 ohm/100 m, met by 0.020 ohm/100 m, less than the decision"
                        + " rule's band (guard band of 1 × U, four outcomes); the true value meets the limit with a probability of"
                        + " 97.7 %",
                pass.sentence());
        assertEquals("± 0.026", pass.printed().uncertainty());
        assertEquals("97.7 %", pass.printed().probability());
        assertNull(pass.shortfall());
        FindingWords fail = words(guarded, Outcome.CONDITIONAL_FAIL, Subject.ofPair(1), null, 9.4, 9.38, -0.02, known);
        assertEquals(
                "9.400 ohm/100 m at pair 1; the limit is at most 9.380 ohm/100 m, missed by 0.020 ohm/100 m, by no more than the"
                        + " decision rule's band (guard band of 1 × U, four outcomes); the true value meets the limit with a"
                        + " probability of 97.7 %",
                fail.sentence());
        assertEquals("Conductor resistance, pair 1: 0.020 ohm/100 m too much", fail.shortfall());
        Requirement twoOutcomes = RequirementBuilder.like(RESISTANCE)
                .decisionRule(new DecisionRule(DecisionRule.Form.GUARD_BAND_TWO, 0.5))
                .build();
        FindingWords within = words(twoOutcomes, Outcome.FAIL, Subject.ofPair(1), null, 9.36, 9.38, 0.02, known);
        assertEquals(
                "9.360 ohm/100 m at pair 1; the limit is at most 9.380 ohm/100 m, met by 0.020 ohm/100 m, less than the decision"
                        + " rule's band (guard band of 0.5 × U, two outcomes); the true value meets the limit with a probability of"
                        + " 97.7 %",
                within.sentence());
        assertEquals(
                "Conductor resistance, pair 1: met by 0.020 ohm/100 m, less than the guard band", within.shortfall());
    }

    @Test
    void aPassIsSaidPlainlyWhateverItsUncertainty() {
        assertEquals(
                "9.000 ohm/100 m at pair 1; the limit is at most 9.380 ohm/100 m, met by 0.380 ohm/100 m",
                words(RESISTANCE, Outcome.PASS, Subject.ofPair(1), null, 9, 9.38, 0.38, new Uncertainty(0.1, 2, 1))
                        .sentence());
    }

    @Test
    void whatWasNotTestedSaysWhyAndWhatToDo() {
        Obstacle missing =
                new Obstacle(Obstacle.Kind.PAIR_MISSING, Map.of("property", "return-loss", "missing", "pairs 1 to 3"));
        Obstacle cold = new Obstacle(
                Obstacle.Kind.TEMPERATURE_OUTSIDE_WINDOW,
                Map.of("temperature", "22.77777777777778", "at", "30.0", "within", "3.0"));
        FindingWords words = notTested(RETURN_LOSS, new Obstacles(List.of(missing, cold), 4));
        assertEquals("not tested", words.outcome());
        assertEquals(
                "not tested: pair missing: return-loss of pairs 1 to 3 was not measured (and 5 more)",
                words.sentence());
        assertEquals("pair missing: return-loss of pairs 1 to 3 was not measured (and 5 more)", words.note());
        assertEquals(4, words.moreObstacles());
        assertEquals(
                new ObstacleWords(
                        "pair-missing",
                        Map.of("property", "return-loss", "missing", "pairs 1 to 3"),
                        "pair missing: return-loss of pairs 1 to 3 was not measured",
                        "measure every pair"),
                words.obstacles().get(0));
        assertEquals(
                "temperature outside the window: measured at 22.8 °C; the limit holds at 30 ± 3 °C and no law of correction is"
                        + " stated",
                words.obstacles().get(1).sentence());
        assertEquals("22.77777777777778", words.obstacles().get(1).parts().get("temperature"));
        assertNull(words.printed());
        assertNull(words.remark());
        assertNull(words.shortfall());
    }

    @Test
    void aRecordOfBeforeSaysWhatItSaidThen() {
        Finding old = new Finding(
                "next",
                Property.NEXT,
                Outcome.NOT_TESTED,
                "pair missing: next of pair 3; range not spanned: next of pair 4",
                null,
                0,
                List.of(),
                DecisionRule.SIMPLE_ACCEPTANCE);
        FindingWords words = Wording.english()
                .finding(
                        old,
                        RequirementBuilder.of(Property.NEXT, flatAtLeast(40), new Domain.Range(1, 500), "dB")
                                .build());
        assertEquals(1, words.obstacles().size());
        assertEquals("as-recorded", words.obstacles().get(0).kind());
        assertEquals(old.reason(), words.obstacles().get(0).sentence());
        assertEquals("see to what each reason names", words.obstacles().get(0).remedy());
    }

    @Test
    void aFindingThatWasTestedMayHaveARemark() {
        Finding varying = new Finding(
                "conductor-resistance",
                Property.CONDUCTOR_RESISTANCE,
                Outcome.PASS,
                "allowed variation: pair 3 left out of the arithmetic",
                Findings.figure(RESISTANCE, Subject.ofPair(1), null, 9, 9.38, 0.38, null),
                1,
                List.of(3),
                DecisionRule.SIMPLE_ACCEPTANCE);
        FindingWords words = Wording.english().finding(varying, RESISTANCE);
        assertEquals("allowed variation: pair 3 left out of the arithmetic", words.remark());
        assertEquals(words.remark(), words.note());
        assertEquals(List.of(), words.obstacles());
    }

    @ParameterizedTest
    @CsvSource({"48.3, 48, '≥', 0.3", "55.5, 56, '≤', 0.5"})
    void ofTwoBoundsTheNearerIsPrinted(double value, double limit, String sign, String margin) {
        Requirement between = RequirementBuilder.of(
                        Property.MUTUAL_CAPACITANCE,
                        Limit.between(new Bound.Constant(48, 0), new Bound.Constant(56, 0)),
                        NONE,
                        "nF/km")
                .build();
        FindingWords words =
                words(between, Outcome.PASS, Subject.ofPair(1), null, value, limit, Math.abs(value - limit), null);
        assertEquals(sign, words.printed().senseSign());
        assertEquals(margin, words.printed().margin());
    }

    @Test
    void aTitleTellsRequirementsOnOnePropertyApart() {
        Requirement loss = RequirementBuilder.of(
                        Property.INSERTION_LOSS, atMost(18, 1), new Domain.Spot(0.772), "dB/km")
                .statistic(Statistic.MEAN)
                .build();
        assertEquals("Insertion loss, average, at 772 kHz", Wording.english().title(loss));
        Requirement next = RequirementBuilder.of(Property.NEXT, atLeast(40, 0), NONE, "dB")
                .scope(Scope.ADJACENT_UNITS)
                .unitPairs(new PairCount(12, 13))
                .build();
        assertEquals(
                "NEXT, adjacent units, units of 12 to 13 pairs",
                Wording.english().title(next));
        assertEquals(
                "NEXT, adjacent units, units of 25 pairs",
                Wording.english()
                        .title(RequirementBuilder.like(next)
                                .unitPairs(new PairCount(25, 25))
                                .build()));
    }

    @ParameterizedTest
    @CsvSource({
        "WITHIN_UNIT, 'NEXT, mean less one standard deviation, within each unit'",
        "ADJACENT_UNITS, 'NEXT, mean less one standard deviation, of each two adjacent units'",
        "NONADJACENT_UNITS, 'NEXT, mean less one standard deviation, of each two units apart'"
    })
    void aTitleSaysThatAStatisticIsOfEachUnit(Scope scope, String title) {
        Requirement next = RequirementBuilder.of(Property.NEXT, atLeast(60, 0), NONE, "dB")
                .statistic(Statistic.MEAN_MINUS_SIGMA)
                .scope(scope)
                .particulars(new Particulars(
                        true, OptionalDouble.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Per.UNIT))
                .build();

        assertEquals(title, Wording.english().title(next));
    }

    @Test
    void theLinesOfAPlotHaveNames() {
        Wording wording = Wording.english();
        assertEquals(
                "1-2, far end",
                wording.label(Property.NEXT, Subject.ofCombination(1, 2).at(End.FAR)));
        assertEquals("1 from 2", wording.label(Property.ACR_F, Subject.ofCombination(1, 2)));
        assertEquals(
                "pair 1, near end",
                wording.label(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR)));
        assertEquals("reel", wording.label(Property.DELAY_SKEW, Subject.ofReel()));
        assertEquals(
                "limit, average, at 772 kHz: 18 dB/km",
                wording.label(
                        RequirementBuilder.of(Property.INSERTION_LOSS, atMost(18, 1), new Domain.Spot(0.772), "dB/km")
                                .statistic(Statistic.MEAN)
                                .build()));
        assertEquals("limit", wording.label(RETURN_LOSS));
    }
}
