package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.DecisionRule.Form;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.RoundingRule;
import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConformityValidationTest {
    // The figures have ten decimal places: half of the last.
    private static final double HALF_LAST_PLACE = 5e-11;

    private static Limit atMost(double value) {
        return Limit.atMost(new Bound.Constant(value, 1));
    }

    private static Limit atLeast(double value) {
        return Limit.atLeast(new Bound.Constant(value, 1));
    }

    private static double probability(double value, Limit limit, double standard) {
        return Conformity.probability(value, limit, Double.NaN, standard);
    }

    /**
     * Source of the numbers y, u, TL and TU: JCGM 106:2012, clause 7.4, found second-hand in a web article that quotes it. The result is
     * calculated (Φ by numeric integration in another program); the guide's own rounding was not seen.
     */
    @Test
    void theGuidesTwoSidedExample() {
        Limit between = Limit.between(new Bound.Constant(12.5, 1), new Bound.Constant(16.3, 1));
        assertEquals(0.6626297865, probability(13.6, between, 1.8), HALF_LAST_PLACE);
    }

    /** Source: the standard normal distribution function, calculated; 1.645, 1.96 and 2 are in every table of it. */
    @ParameterizedTest
    @CsvSource({
        "0, 0.5",
        "0.5, 0.6914624613",
        "1, 0.8413447461",
        "1.5, 0.9331927987",
        "1.645, 0.9500150945",
        "1.96, 0.9750021049",
        "2, 0.9772498681",
        "3, 0.9986501020"
    })
    void oneSided(double z, double expected) {
        double standard = 0.25;
        assertEquals(expected, probability(10 - z * standard, atMost(10), standard), HALF_LAST_PLACE);
        assertEquals(expected, probability(10 + z * standard, atLeast(10), standard), HALF_LAST_PLACE);
        assertEquals(1 - expected, probability(10 + z * standard, atMost(10), standard), HALF_LAST_PLACE);
    }

    /**
     * Source: the risk of a wrong acceptance on the edge of a guard band w, calculated as 1 − Φ(w/u); ILAC-G8:09/2019 rounds these to
     * "below 50 %", "about 16 %", 5 % and "below 2.5 %".
     */
    @ParameterizedTest
    @CsvSource({"0, 0.5", "1, 0.1586552539", "1.645, 0.0499849055", "2, 0.0227501319"})
    void theRiskOnTheEdgeOfAGuardBand(double widthInStandardUncertainties, double risk) {
        double standard = 0.3;
        double onTheEdge = 93.8 - widthInStandardUncertainties * standard;
        assertEquals(risk, 1 - probability(onTheEdge, atMost(93.8), standard), HALF_LAST_PLACE);
    }

    /** A loop resistance of at most 93.8 ohm/km with u = 0.3 and w = U = 0.6; limit illustrative, probabilities calculated. */
    @ParameterizedTest
    @CsvSource({
        "93.0, 0.9961696194, PASS",
        "93.2, 0.9772498681, PASS",
        "93.5, 0.8413447461, CONDITIONAL_PASS",
        "93.8, 0.5, CONDITIONAL_PASS",
        "94.1, 0.1586552539, CONDITIONAL_FAIL",
        "94.4, 0.0227501319, CONDITIONAL_FAIL",
        "94.5, 0.0098153286, FAIL"
    })
    void aCablesLoopResistance(double value, double expected, Outcome outcome) {
        Limit limit = atMost(93.8);
        assertEquals(expected, probability(value, limit, 0.3), HALF_LAST_PLACE);
        assertEquals(
                outcome,
                Comparison.unrounded(value, limit, Double.NaN).outcome(new DecisionRule(Form.GUARD_BAND_FOUR, 1), 0.6));
    }

    /**
     * Source: ILAC-G8:09/2019, clause 4.2 (read in a copy on the web): which statement a rule makes of a value y against an upper limit
     * of 10 with w = 1. The clause leaves open what a value exactly on a boundary is; here it counts for the better side.
     */
    @ParameterizedTest
    @CsvSource({
        "8.9, PASS, PASS, PASS",
        "9, PASS, PASS, PASS",
        "9.1, PASS, FAIL, CONDITIONAL_PASS",
        "10, PASS, FAIL, CONDITIONAL_PASS",
        "10.1, FAIL, FAIL, CONDITIONAL_FAIL",
        "11, FAIL, FAIL, CONDITIONAL_FAIL",
        "11.1, FAIL, FAIL, FAIL"
    })
    void theStatementsOfTheThreeRules(double value, Outcome simple, Outcome two, Outcome four) {
        Comparison comparison = Comparison.unrounded(value, atMost(10), Double.NaN);
        assertEquals(simple, comparison.outcome(DecisionRule.SIMPLE_ACCEPTANCE, 0));
        assertEquals(two, comparison.outcome(new DecisionRule(Form.GUARD_BAND_TWO, 1), 1));
        assertEquals(four, comparison.outcome(new DecisionRule(Form.GUARD_BAND_FOUR, 1), 1));
        Comparison mirrored = Comparison.unrounded(20 - value, atLeast(10), Double.NaN);
        assertEquals(simple, mirrored.outcome(DecisionRule.SIMPLE_ACCEPTANCE, 0));
        assertEquals(two, mirrored.outcome(new DecisionRule(Form.GUARD_BAND_TWO, 1), 1));
        assertEquals(four, mirrored.outcome(new DecisionRule(Form.GUARD_BAND_FOUR, 1), 1));
    }

    /**
     * Source: ASTM E29, rounding method (a field manual's rendering, read; the first seven values found there, the rest calculated by its
     * rule). The limit is printed to the places that a value is rounded to.
     */
    @ParameterizedTest
    @CsvSource({
        "45.71, 0.0, 45.7",
        "45.74, 0.0, 45.7",
        "45.76, 0.0, 45.8",
        "45.7500, 0.0, 45.8",
        "45.4500, 0.0, 45.4",
        "45.45001, 0.0, 45.5",
        "45.45105, 0.0, 45.5",
        "1.5, 0, 2",
        "2.5, 0, 2",
        "9.385, 0.00, 9.38",
        "9.395, 0.00, 9.40",
        "45.4499, 0.0, 45.4"
    })
    void roundingATieToTheEvenDigit(double value, String places, double rounded) {
        Limit limit = Limit.atMost(new Bound.Constant(100, Math.max(0, new BigDecimal(places).scale())));
        assertEquals(
                rounded,
                Comparison.of(value, limit, Double.NaN, RoundingRule.TO_THE_PLACES_OF_THE_LIMIT)
                        .judged());
    }

    @Test
    void withoutUncertaintyAValueConformsOrNot() {
        assertEquals(1, probability(10, atMost(10), 0));
        assertEquals(0, probability(10.1, atMost(10), 0));
        assertThrows(IllegalArgumentException.class, () -> probability(10, atMost(10), Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> probability(10, atMost(10), -1));
    }
}
