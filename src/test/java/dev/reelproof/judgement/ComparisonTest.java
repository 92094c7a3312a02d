package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.RoundingRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparisonTest {
    private static final Bound LOWER = new Bound.Constant(48, 0);
    private static final Bound UPPER = new Bound.Constant(56, 0);
    private static final Limit BETWEEN = Limit.between(LOWER, UPPER);

    @ParameterizedTest
    @CsvSource({"48, 48, 0", "47.5, 48, -0.5", "50, 48, 2", "52, 56, 4", "55, 56, 1", "56, 56, 0", "56.5, 56, -0.5"})
    void ofTwoBoundsTheNearerCountsAndInTheMiddleTheUpper(double value, double limit, double margin) {
        Comparison comparison = Comparison.unrounded(value, BETWEEN, 0);

        assertEquals(limit, comparison.limit());
        assertEquals(limit == 48 ? LOWER : UPPER, comparison.bound());
        assertEquals(margin, comparison.margin());
        assertEquals(margin >= 0, comparison.passes());
    }

    // A miss of 1e-12 of the figure is noise of double arithmetic; the limit of -200 shows that its size counts, not
    // its sign.
    @ParameterizedTest
    @CsvSource({"5.6, 5.6e-12, 7e-12", "-200, 1.5e-10, 3e-10", "100, 9e-11, 2e-10"})
    void aMissIsNoiseOnlyWhileItIsASmallShareOfTheFigures(double limit, double noise, double miss) {
        Limit atMost = Limit.atMost(new Bound.Constant(limit, 1));

        assertEquals(0, Comparison.unrounded(limit + noise, atMost, 0).margin());
        assertEquals(0, Comparison.unrounded(limit - noise, atMost, 0).margin());
        assertFalse(Comparison.unrounded(limit + miss, atMost, 0).passes());
        assertTrue(Comparison.unrounded(limit - miss, atMost, 0).margin() > 0);
    }

    @Test
    void onlyAFigureThatIsPrintedWithPlacesRounds() {
        Limit curve = Limit.atMost(Bench.flat(93.8, 1, 10));
        Limit printed = Limit.atMost(new Bound.Constant(93.8, 1));
        RoundingRule rule = RoundingRule.TO_THE_PLACES_OF_THE_LIMIT;

        assertEquals(93.84, Comparison.of(93.84, curve, 5, rule).judged());
        assertEquals(93.8, Comparison.of(93.84, printed, 5, rule).judged());
        assertEquals(93.84, Comparison.unrounded(93.84, printed, 5).judged());
    }

    @ParameterizedTest
    @CsvSource({"NaN", "Infinity", "-Infinity"})
    void whatIsNoNumberHasNoMargin(double value) {
        String message = assertThrows(
                        IllegalArgumentException.class, () -> Comparison.unrounded(value, Limit.atMost(UPPER), 0))
                .getMessage();

        assertTrue(message.contains("cannot be judged"), message);
    }
}
