package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.DecisionRule.Form;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a judgement, its findings and their figures refuse. */
class JudgementTest {
    private static final DecisionRule FOUR_OUTCOMES = new DecisionRule(Form.GUARD_BAND_FOUR, 1);
    private static final Uncertainty SURE = new Uncertainty(0.2, 2, 0.9);

    private static Figure figure(double value, double judged, double limit, double margin, String unit) {
        return new Figure(
                Subject.ofPair(1),
                null,
                100.0,
                value,
                "dB",
                value,
                judged,
                limit,
                margin,
                unit,
                false,
                SURE,
                List.of());
    }

    private static Figure figure() {
        return figure(44, 44, 43, 1, "dB");
    }

    private static Finding finding(Outcome outcome) {
        return outcome == Outcome.NOT_TESTED
                ? finding(outcome, "no data", null, 0, FOUR_OUTCOMES)
                : finding(outcome, null, figure(), 1, FOUR_OUTCOMES);
    }

    private static Finding finding(Outcome outcome, String reason, Figure figure, int points, DecisionRule rule) {
        return new Finding("next", Property.NEXT, outcome, reason, figure, points, List.of(), rule);
    }

    private static Judgement judgement(Verdict verdict, Outcome... outcomes) {
        return new Judgement(
                "a-set",
                1,
                "digest",
                "test",
                verdict,
                Arrays.stream(outcomes).map(JudgementTest::finding).toList(),
                List.of(),
                null);
    }

    @ParameterizedTest
    @CsvSource({
        "ACCEPTED, PASS",
        "ACCEPTED, PASS CONDITIONAL_PASS",
        "REJECTED, FAIL",
        "REJECTED, PASS CONDITIONAL_FAIL",
        "REJECTED, PASS FAIL NOT_TESTED",
        "INCOMPLETE, NOT_TESTED",
        "INCOMPLETE, PASS NOT_TESTED",
        "INCOMPLETE, ''"
    })
    void theVerdictIsWhatTheFindingsComeToAndNoOther(Verdict verdict, String outcomes) {
        Outcome[] found = outcomes.isEmpty()
                ? new Outcome[0]
                : Arrays.stream(outcomes.split(" ")).map(Outcome::valueOf).toArray(Outcome[]::new);
        assertEquals(verdict, judgement(verdict, found).verdict());
        for (Verdict other : Verdict.values()) {
            if (other != verdict) {
                Exception refused =
                        assertThrows(IllegalArgumentException.class, () -> judgement(other, found), other::word);
                assertTrue(refused.getMessage().contains(other.word()), refused.getMessage());
            }
        }
    }

    /** Version 0.1 accepted reels on findings that had no figure. */
    @Test
    void aVerdictOfBeforeStandsWhereAFigureWasNotKept() {
        Obstacles notKept = Obstacles.figureNotKept(Outcome.PASS);
        Finding without = new Finding(
                "next",
                Property.NEXT,
                Outcome.NOT_TESTED,
                notKept.sentence(),
                notKept,
                null,
                0,
                List.of(),
                DecisionRule.SIMPLE_ACCEPTANCE,
                null);
        assertEquals(Verdict.ACCEPTED, judged(Verdict.ACCEPTED, without).verdict());
        assertEquals(
                Verdict.ACCEPTED,
                judged(Verdict.ACCEPTED, without, finding(Outcome.PASS)).verdict());
        assertEquals(Verdict.INCOMPLETE, judged(Verdict.INCOMPLETE, without).verdict());
        refused(() -> judged(Verdict.REJECTED, without));
        refused(() -> judged(Verdict.ACCEPTED, without, finding(Outcome.NOT_TESTED)));
        refused(() -> judged(Verdict.ACCEPTED, without, finding(Outcome.FAIL)));
    }

    private static Judgement judged(Verdict verdict, Finding... findings) {
        return new Judgement("a-set", 1, "digest", "0.1.0", verdict, List.of(findings), List.of(), null);
    }

    @Test
    void aJudgementNamesWhatItWasJudgedBy() {
        List<Finding> findings = List.of(finding(Outcome.PASS));
        refused(() -> new Judgement(" ", 1, "digest", "test", Verdict.ACCEPTED, findings, List.of(), null));
        refused(() -> new Judgement("a-set", 0, "digest", "test", Verdict.ACCEPTED, findings, List.of(), null));
        refused(() -> new Judgement("a-set", 1, "", "test", Verdict.ACCEPTED, findings, List.of(), null));
        refused(() -> new Judgement("a-set", 1, "digest", null, Verdict.ACCEPTED, findings, List.of(), null));
        refused(() -> new Judgement.Model("", 1, "digest"));
        refused(() -> new Judgement.Model("a-model", 0, "digest"));
        refused(() -> new Judgement.Model("a-model", 1, " "));
    }

    @ParameterizedTest
    @EnumSource(
            value = Outcome.class,
            names = {"PASS", "CONDITIONAL_PASS", "CONDITIONAL_FAIL", "FAIL"})
    void whatPassesOrFailsHasAFigure(Outcome outcome) {
        refused(() -> finding(outcome, null, null, 1, FOUR_OUTCOMES));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "  "})
    void whatWasNotTestedHasAReason(String reason) {
        refused(() -> finding(Outcome.NOT_TESTED, reason, figure(), 1, FOUR_OUTCOMES));
        refused(() -> finding(Outcome.NOT_TESTED, null, figure(), 1, FOUR_OUTCOMES));
    }

    @ParameterizedTest
    @EnumSource(
            value = Outcome.class,
            names = {"CONDITIONAL_PASS", "CONDITIONAL_FAIL"})
    void onlyARuleOfFourOutcomesHasConditionalOnes(Outcome outcome) {
        refused(() -> finding(outcome, null, figure(), 1, DecisionRule.SIMPLE_ACCEPTANCE));
        refused(() -> finding(outcome, null, figure(), 1, new DecisionRule(Form.GUARD_BAND_TWO, 1)));
    }

    @Test
    void aFindingNamesItsRequirementAndCountsItsPoints() {
        refused(() -> finding(Outcome.PASS, null, figure(), -1, FOUR_OUTCOMES));
        refused(() -> new Finding(" ", Property.NEXT, Outcome.PASS, null, figure(), 1, List.of(), FOUR_OUTCOMES));
        refused(() -> new Finding("next", Property.NEXT, Outcome.PASS, null, figure(), 1, List.of(0), FOUR_OUTCOMES));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aFigureIsOfFiniteNumbers(double endless) {
        refused(() -> figure(endless, 44, 43, 1, "dB"));
        refused(() -> figure(44, endless, 43, 1, "dB"));
        refused(() -> figure(44, 44, endless, 1, "dB"));
        refused(() -> figure(44, 44, 43, endless, "dB"));
        refused(() ->
                new Figure(Subject.ofReel(), null, endless, 44.0, "dB", 44, 44, 43, 1, "dB", false, null, List.of()));
        refused(() ->
                new Figure(Subject.ofReel(), null, 100.0, endless, "dB", 44, 44, 43, 1, "dB", false, null, List.of()));
        refused(() -> new Step("measured", "at /readings/3", endless, "dB", null));
        refused(() -> new Uncertainty(0.1, endless, 0.5));
        refused(() -> new Uncertainty(endless, 2, 0.5));
        refused(() -> new Uncertainty(0.1, 2, endless));
    }

    @Test
    void aFigureHasAUnitAndItsRawValueOne() {
        refused(() -> figure(44, 44, 43, 1, " "));
        refused(() -> figure(44, 44, 43, 1, null));
        refused(() -> new Figure(Subject.ofReel(), null, 0.0, 44.0, "dB", 44, 44, 43, 1, "dB", false, null, List.of()));
        refused(() ->
                new Figure(Subject.ofReel(), null, null, 44.0, null, 44, 44, 43, 1, "dB", false, null, List.of()));
        refused(() ->
                new Figure(Subject.ofReel(), null, null, null, "dB", 44, 44, 43, 1, "dB", false, null, List.of()));
        refused(() -> new Step(" ", "at /readings/3", 44, "dB", null));
    }

    private static void refused(org.junit.jupiter.api.function.Executable making) {
        assertThrows(IllegalArgumentException.class, making);
    }
}
