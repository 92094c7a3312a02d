package dev.reelproof.genealogy.balance;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.Stretch;
import dev.reelproof.genealogy.admission.LotChecks;

/**
 * Common practice, no source: a stretch of a lot goes into one other lot. Two that by their positions took the same metres cannot
 * both be right.
 *
 * <ul>
 *   <li>Equation: min(b1, b2) − max(a1, a2) ≤ 0.02 · min(b1 − a1, b2 − a2)
 *   <li>Symbols: a and b lower and upper end on the parent of what went into the one and the other lot, in m, or in kg along a coil
 *       that is measured by mass
 *   <li>Range: two lots made from one parent, both with a position; in whatever direction each ran
 *   <li>Source: the tolerance is the 2 % by which counters differ, of the shorter of the two: common practice, no source
 *   <li>Edge cases: cuts that touch do not overlap. Material without positions, such as a compound, is never looked at
 *   <li>Known error: a short piece after a long one shows when the long one's counter slipped by more than 2 % of the piece; what
 *       was slit lengthwise into several shows too
 * </ul>
 */
public final class OverlappingCuts {
    private OverlappingCuts() {}

    /** Whether two lots claim the same stretch of their parent, beyond what counters differ by. */
    public static boolean overlap(Placement one, Placement other) {
        Stretch of = one.stretchOfParent();
        Stretch ofOther = other.stretchOfParent();
        double shorter = Math.min(of.length(), ofOther.length());
        return of.common(ofOther)
                .filter(common -> common.length() > LotChecks.OF_COUNTERS * shorter)
                .isPresent();
    }

    /**
     * Flags a stretch that two lots both claim. It names only the parent, and so says the same whichever of the two came first.
     *
     * @param placement where on its parent the flagged lot lay
     */
    public static Implausibility implausibility(LotId parent, Placement placement) {
        Amount unit = new Amount(1, placement.onParentUnit());
        Stretch stretch = placement.stretchOfParent();
        return new Implausibility(
                parent,
                "by its position it took from " + unit.inMyUnit(stretch.from()) + " to " + unit.inMyUnit(stretch.to())
                        + " of lot " + parent
                        + ", and another lot took some of that too, by more than 2 % of the shorter"
                        + " of the two; nothing goes into two lots: compare the positions of all that were made from lot "
                        + parent);
    }
}
