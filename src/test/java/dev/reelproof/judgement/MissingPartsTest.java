package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.requirement;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.function.BiPredicate;
import org.junit.jupiter.api.Test;

/** What an incomplete reel is told: which pair, combination, conductor or end is missing, and of which part. */
class MissingPartsTest {
    private static final Requirement PS_NEXT = requirement(
            Property.PS_NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), new Domain.Range(1, 10), "dB");

    private static String reason(End end, BiPredicate<Integer, Integer> measured) {
        Bench bench = new Bench().require(PS_NEXT);
        for (int pair = 1; pair <= 4; pair++) {
            for (int partner = pair + 1; partner <= 4; partner++) {
                if (measured.test(pair, partner)) {
                    bench.sweep(
                            Property.NEXT, Subject.ofCombination(partner, pair).at(end), everyMegahertzTo(10), f -> 60);
                }
            }
        }
        return bench.only().reason();
    }

    @Test
    void aPowerSumNamesTheCombinationsThatItLacks() {
        assertEquals(
                "no data: no ps-next was measured, nor any next that it is formed from",
                reason(End.NEAR, (one, other) -> false));
        assertEquals(
                "no data: no ps-next was measured, and it is not formed:"
                        + " next is missing of every combination with pair 3 at the near end",
                reason(End.NEAR, (one, other) -> one != 3 && other != 3));
        assertEquals(
                "pair missing: ps-next of pairs 1 and 2 at the near end was not measured, and it is not formed:"
                        + " next is missing of pair 1 and pair 2 at the near end",
                reason(End.NEAR, (one, other) -> one != 1 || other != 2));
        assertEquals(null, reason(End.NEAR, (one, other) -> true));
    }

    @Test
    void theFarEndDoesNotStandInForTheNear() {
        assertEquals(
                "pair missing: ps-next of pairs 1 to 4 at the near end was not measured, and it is not formed:"
                        + " next is missing of every combination at the near end",
                reason(End.FAR, (one, other) -> true));
    }

    @Test
    void pairsAndConductorsAreDrawnTogether() {
        Requirement resistance = requirement(
                Property.CONDUCTOR_RESISTANCE, Statistic.INDIVIDUAL, atMost(9, 0), new Domain.NoFrequency(), "ohm");
        Bench bench = new Bench().pairs(12).require(resistance);
        for (int pair : new int[] {1, 2, 7}) {
            bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(pair, Conductor.A), 8, "ohm");
        }
        bench.read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(7, Conductor.B), 8, "ohm");
        assertEquals(
                "pair missing: conductor-resistance of pairs 3 to 6 and 8 to 12, conductor b of pair 1 and conductor b"
                        + " of pair 2 was not measured",
                bench.only().reason());
    }

    private static String missingCapacitances(Integer... missing) {
        Bench bench = new Bench()
                .pairs(12)
                .require(requirement(
                        Property.MUTUAL_CAPACITANCE,
                        Statistic.INDIVIDUAL,
                        atMost(60, 0),
                        new Domain.NoFrequency(),
                        "nF/km"));
        for (int pair = 1; pair <= 12; pair++) {
            if (!List.of(missing).contains(pair)) {
                bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), 52, "nF/km");
            }
        }
        return bench.only().reason().replaceAll("pair missing: mutual-capacitance of (.*) was not measured", "$1");
    }

    @Test
    void threePairsInARowAreARunAndThreeRunsAreNamed() {
        assertEquals("pair 9", missingCapacitances(9));
        assertEquals("pairs 8 and 9", missingCapacitances(8, 9));
        assertEquals("pairs 8 to 10", missingCapacitances(8, 9, 10));
        assertEquals("pairs 2, 4 and 8", missingCapacitances(2, 4, 8));
        assertEquals("pairs 2, 4, 8 and 1 more", missingCapacitances(2, 4, 8, 12));
    }

    @Test
    void theOnlyCombinationIsNamed() {
        Requirement next = requirement(
                Property.NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), new Domain.Range(1, 10), "dB");
        assertEquals(
                "pair missing: next of pair 1 and pair 2 at the near end was not measured",
                new Bench()
                        .pairs(2)
                        .require(next)
                        .sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.FAR), everyMegahertzTo(10), f -> 60)
                        .only()
                        .reason());
    }
}
