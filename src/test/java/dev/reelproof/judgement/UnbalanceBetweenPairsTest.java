package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.requirement;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import org.junit.jupiter.api.Test;

/** Resistance unbalance between pairs, derived from the resistances of their conductors. */
class UnbalanceBetweenPairsTest {
    private static final Requirement BETWEEN_PAIRS = requirement(
            Property.RESISTANCE_UNBALANCE_BETWEEN_PAIRS,
            Statistic.INDIVIDUAL,
            atMost(5, 0),
            new Domain.NoFrequency(),
            "%");

    private static Bench resistances(Bench bench, int pair, double a, double b, String unit) {
        return bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(pair, Conductor.A), a, unit)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(pair, Conductor.B), b, unit);
    }

    private static Bench twoPairs() {
        return new Bench().pairs(2).reel(305, 20).require(BETWEEN_PAIRS);
    }

    // Arithmetic: 9.40 × 9.00 / 18.40 = 4.59783, 9.60 × 9.20 / 18.80 = 4.69787; their difference over the smaller is
    // 2.1760 %.
    @Test
    void itComparesTheConductorsInParallel() {
        Bench bench = twoPairs();
        resistances(bench, 1, 9.40, 9.00, "ohm");
        resistances(bench, 2, 9.60, 9.20, "ohm");

        Finding finding = bench.only();

        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(2.1760, finding.figure().value(), 0.0001);
        assertEquals(Subject.ofCombination(1, 2), finding.figure().subject());
    }

    @Test
    void pairsSentPerDifferentLengthsAreNotCompared() {
        Bench bench = twoPairs();
        resistances(bench, 1, 90, 90, "ohm/km");
        resistances(bench, 2, 90, 90, "ohm");

        Finding finding = bench.only();

        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().contains("sent per different lengths"), finding.reason());
    }
}
