package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.Scope;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoreLayoutTest {
    private static final PairCount OF_12 = new PairCount(12, 12);

    /** Units of 12, 13 and 12 pairs in a row; only one of two that touch says so. */
    private static final CoreLayout IN_A_ROW = core(
            37,
            new CoreUnit(1, 1, 12, Set.of(2)),
            new CoreUnit(2, 13, 25, Set.of()),
            new CoreUnit(3, 26, 37, Set.of(2)));

    private static CoreLayout core(int pairs, CoreUnit... units) {
        return new CoreLayout(new Product("P", "", "set", pairs, "24 AWG", null, Map.of(), List.of(units)));
    }

    private static Requirement of(Scope scope) {
        return RequirementBuilder.of(
                        Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, atMost(145, 0), new Domain.NoFrequency(), "pF/km")
                .scope(scope)
                .build();
    }

    private static Requirement of(Scope scope, PairCount unitPairs) {
        return RequirementBuilder.like(of(scope)).unitPairs(unitPairs).build();
    }

    @Test
    void aCoreOfUpTo25PairsIsOneUnit() {
        assertTrue(core(25).isKnown());
        assertTrue(core(25).counts(of(Scope.WITHIN_UNIT), 1, 25));
        assertFalse(core(26).isKnown());
        assertFalse(core(26).counts(of(Scope.WITHIN_UNIT), 1, 2));
        assertTrue(core(26).counts(of(Scope.CORE), 1, 26));
    }

    @ParameterizedTest
    @CsvSource({
        // one, other, within, adjacent, nonadjacent
        "1, 12, true, false, false",
        "12, 13, false, true, false",
        "13, 25, true, false, false",
        "25, 26, false, true, false",
        "26, 12, false, false, true",
        "26, 37, true, false, false",
    })
    void everyCombinationIsOfOneScope(int pair, int partner, boolean within, boolean adjacent, boolean nonadjacent) {
        for (int[] order : new int[][] {{pair, partner}, {partner, pair}}) {
            assertEquals(within, IN_A_ROW.counts(of(Scope.WITHIN_UNIT), order[0], order[1]));
            assertEquals(adjacent, IN_A_ROW.counts(of(Scope.ADJACENT_UNITS), order[0], order[1]));
            assertEquals(nonadjacent, IN_A_ROW.counts(of(Scope.NONADJACENT_UNITS), order[0], order[1]));
            assertTrue(IN_A_ROW.counts(of(Scope.CORE), order[0], order[1]));
        }
    }

    @ParameterizedTest
    @CsvSource({
        // one, other, within, adjacent, nonadjacent, core: of units of 12 pairs alone
        "1, 12, true, false, false, true",
        "12, 13, false, false, false, false",
        "13, 14, false, false, false, false",
        "13, 12, false, false, false, false",
        "12, 26, false, false, true, true",
    })
    void theSizesOfBothUnitsCount(
            int pair, int partner, boolean within, boolean adjacent, boolean nonadjacent, boolean anywhere) {
        assertEquals(within, IN_A_ROW.counts(of(Scope.WITHIN_UNIT, OF_12), pair, partner));
        assertEquals(adjacent, IN_A_ROW.counts(of(Scope.ADJACENT_UNITS, OF_12), pair, partner));
        assertEquals(nonadjacent, IN_A_ROW.counts(of(Scope.NONADJACENT_UNITS, OF_12), pair, partner));
        assertEquals(anywhere, IN_A_ROW.counts(of(Scope.CORE, OF_12), pair, partner));
    }

    @Test
    void aRequirementIsMetByACoreThatHasItsCombinations() {
        assertTrue(IN_A_ROW.meets(of(Scope.WITHIN_UNIT, OF_12)));
        assertTrue(IN_A_ROW.meets(of(Scope.NONADJACENT_UNITS, OF_12)));
        assertTrue(IN_A_ROW.meets(of(Scope.CORE, OF_12)));
        assertTrue(IN_A_ROW.meets(of(Scope.ADJACENT_UNITS)));
        assertFalse(IN_A_ROW.meets(of(Scope.ADJACENT_UNITS, OF_12)), "the units of 12 do not touch");
        assertFalse(IN_A_ROW.meets(of(Scope.WITHIN_UNIT, new PairCount(25, 25))));
        assertFalse(IN_A_ROW.meets(of(Scope.CORE, new PairCount(25, 25))));
        assertFalse(core(25).meets(of(Scope.ADJACENT_UNITS)));
        assertFalse(core(25).meets(of(Scope.NONADJACENT_UNITS)));
    }

    @Test
    void aUnitOfOnePairHasNoCombinationWithinIt() {
        CoreLayout singles = core(2, new CoreUnit(1, 1, 1, Set.of(2)), new CoreUnit(2, 2, 2, Set.of(1)));

        assertFalse(singles.meets(of(Scope.WITHIN_UNIT)));
        assertTrue(singles.meets(of(Scope.ADJACENT_UNITS)));
    }

    @Test
    void whereTheUnitsAreUnknownARequirementIsNotLeftOut() {
        assertTrue(core(100).meets(of(Scope.WITHIN_UNIT, OF_12)));
    }

    @Test
    void aRequirementForOtherPairCountsIsNotMet() {
        Requirement forSmallCores = RequirementBuilder.like(of(Scope.CORE))
                .pairs(new PairCount(6, 12))
                .build();

        assertTrue(core(6).meets(forSmallCores));
        assertTrue(core(12).meets(forSmallCores));
        assertFalse(core(5).meets(forSmallCores));
        assertFalse(core(13).meets(forSmallCores));
    }
}
