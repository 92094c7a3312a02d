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
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import org.junit.jupiter.api.Test;

/** Where no value was held against a limit, nothing passed. */
class NothingJudgedTest {

    @Test
    void aLimitWithoutFrequencyHoldsAtEveryFrequencyOfASweep() {
        Requirement skew =
                requirement(Property.DELAY_SKEW, Statistic.INDIVIDUAL, atMost(45, 0), new Domain.NoFrequency(), "ns");
        Bench bench = new Bench().pairs(2).require(skew);
        bench.sweep(Property.PROPAGATION_DELAY, Subject.ofPair(1), everyMegahertzTo(10), f -> 500);
        bench.sweep(Property.PROPAGATION_DELAY, Subject.ofPair(2), everyMegahertzTo(10), f -> f == 7 ? 546 : 540);

        Finding finding = bench.only();

        assertEquals(Outcome.FAIL, finding.outcome());
        assertEquals(7.0, finding.figure().megahertz());
        assertEquals(10, finding.points());
    }

    @Test
    void aRangeBetweenTwoPointsOfTheSweepIsNotTested() {
        Requirement narrow = requirement(
                Property.RETURN_LOSS,
                Statistic.INDIVIDUAL,
                Limit.atLeast(flat(20, 5.2, 5.8)),
                new Domain.Range(5.2, 5.8),
                "dB");
        Bench bench = new Bench()
                .pairs(1)
                .require(narrow)
                .sweep(
                        Property.RETURN_LOSS,
                        Subject.ofPair(1).at(End.NEAR),
                        FrequencyGrid.ofMegahertz(1, 3, 5, 6, 8),
                        f -> 25);

        Finding finding = bench.only();

        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertEquals("no data: no return-loss was measured where the limit holds", finding.reason());
    }
}
