package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class WorstFirstTest {

    private static Finding finding(Outcome outcome, Double margin) {
        Figure figure = margin == null
                ? null
                : new Figure(Subject.ofPair(1), null, null, 1.0, "dB", 1, 1, 1, margin, "dB", false, null, List.of());
        return new Finding(
                outcome.word() + " " + margin,
                Property.RETURN_LOSS,
                outcome,
                outcome == Outcome.NOT_TESTED ? "a reason" : null,
                figure,
                1,
                List.of(),
                new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1));
    }

    @Test
    void whatMattersMostComesFirst() {
        List<Finding> inOrder = List.of(
                finding(Outcome.FAIL, -3.0),
                finding(Outcome.FAIL, -1.0),
                finding(Outcome.CONDITIONAL_FAIL, -0.1),
                finding(Outcome.NOT_TESTED, 2.0),
                finding(Outcome.NOT_TESTED, null),
                finding(Outcome.CONDITIONAL_PASS, 0.1),
                finding(Outcome.PASS, 0.5),
                finding(Outcome.PASS, 4.0));
        List<Finding> shuffled =
                Stream.of(5, 7, 0, 4, 2, 6, 1, 3).map(inOrder::get).toList();
        assertEquals(inOrder, shuffled.stream().sorted(new WorstFirst()).toList());
    }
}
