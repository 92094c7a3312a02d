package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.LimitSamples;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** TCL and EL-TCTL of the second revisions, judged where they were measured. */
class BalanceJudgedTest {
    private static final LimitSet SET = LimitSamples.shipped("category-6a-cable", 2);

    /** The curve of the set, written out: 30 − 10 log10(f/100), 40 dB at most. */
    private static double tcl(double megahertz) {
        return Math.min(40, 30 - 10 * Math.log10(megahertz / 100));
    }

    private static double elTctl(double megahertz) {
        return 35 - 20 * Math.log10(megahertz);
    }

    private static List<Finding> findings(Property property, int pairs, int top, DoubleUnaryOperator value) {
        Bench bench = new Bench();
        for (int pair = 1; pair <= pairs; pair++) {
            bench.sweep(property, Subject.ofPair(pair).at(End.NEAR), Bench.everyMegahertzTo(top), value);
        }
        return Judge.judge(bench.result(), bench.product(), SET, Optional.empty(), "test").findings().stream()
                .filter(finding -> finding.property() == property)
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"0.1, PASS", "-0.1, FAIL"})
    void tclIsJudgedOverAndUnderItsLimit(double spare, Outcome outcome) {
        Finding finding = findings(Property.TCL, 4, 500, f -> tcl(f) + spare).get(0);

        assertEquals(outcome, finding.outcome());
        assertEquals(spare, finding.figure().margin(), 1e-9);
    }

    /** One place below the curve decides: 27.9 dB at 160 MHz, where 27.96 dB is asked. */
    @Test
    void theWorstPlaceOfTclIsFound() {
        Finding finding = findings(Property.TCL, 4, 500, f -> f == 160 ? 27.9 : tcl(f) + 3)
                .get(0);

        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(160, finding.figure().megahertz());
        assertEquals(27.96, finding.figure().limit(), 0.005);
    }

    @ParameterizedTest
    @CsvSource({"0.1, PASS", "-0.1, FAIL"})
    void elTctlIsJudgedTo30Megahertz(double spare, Outcome outcome) {
        Finding finding = findings(Property.EL_TCTL, 4, 100, f -> f > 30 ? 0 : elTctl(f) + spare)
                .get(0);

        assertEquals(outcome, finding.outcome());
    }

    /** A bay that measures no balance has no gap; one that measured some of the pairs has. */
    @Test
    void balanceIsAskedOnlyWhereItWasMeasured() {
        assertTrue(findings(Property.TCL, 0, 500, f -> 50).isEmpty());
        assertEquals(
                Outcome.NOT_TESTED,
                findings(Property.TCL, 3, 500, f -> 50).get(0).outcome());
    }
}
