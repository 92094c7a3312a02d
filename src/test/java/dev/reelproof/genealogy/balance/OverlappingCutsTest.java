package dev.reelproof.genealogy.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Placement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two lots cannot have taken the same metres of one parent. */
class OverlappingCutsTest {
    private static final LotId CABLE = new LotId("JK-1");

    private static Placement on(double parentFrom, double parentTo, String unit) {
        return new Placement(0, 1, "km", parentFrom, parentTo, unit);
    }

    /** The tolerance is 2 % of the shorter: 6.1 m of a reel of 305 m, 0.2 m of a piece of 10 m. */
    @ParameterizedTest
    @CsvSource({
        "   0,  305, m,   305,   610, m,  false",
        "   0,  305, m,   310,   610, m,  false",
        "   0,  305, m,   299,   604, m,  false",
        "   0,  305, m,   298.8, 604, m,  true",
        "   0,  305, m,     0,   305, m,  true",
        "   0, 5000, m,   100,   110, m,  true",
        "   0,  305, m,   304.9, 314.9, m, false",
        "   0,  305, m,   304.7, 314.7, m, true",
        "   0,    1, kft, 0.300, 0.6, km, false",
        "   0,    1, kft, 0.298, 0.6, km, true",
        "   0,  100, kg,   90,   200, kg, true",
        "   0,  100, kg,  100,   200, kg, false",
    })
    void overlapByMoreThanTheCountersDiffer(
            double from, double to, String unit, double otherFrom, double otherTo, String otherUnit, boolean overlap) {
        for (Placement one : new Placement[] {on(from, to, unit), on(to, from, unit)}) {
            for (Placement other :
                    new Placement[] {on(otherFrom, otherTo, otherUnit), on(otherTo, otherFrom, otherUnit)}) {
                assertEquals(overlap, OverlappingCuts.overlap(one, other));
                assertEquals(overlap, OverlappingCuts.overlap(other, one));
            }
        }
    }

    @Test
    void saysWhereAsItWasSentTheLowerEndFirst() {
        Implausibility doubt = OverlappingCuts.implausibility(CABLE, on(1.2, 0.4, "kft"));
        assertEquals(CABLE, doubt.parent());
        assertEquals(
                "by its position it took from 0.4 kft to 1.2 kft of lot JK-1, and another lot took some of that too, by more"
                        + " than 2 % of the shorter of the two; nothing goes into two lots: compare the positions of all"
                        + " that were made from lot JK-1",
                doubt.message());
    }
}
