package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.balance.CopperDiameter;
import java.time.OffsetDateTime;

/**
 * What a registered lot had and what its children have taken so far.
 *
 * @param id the lot
 * @param kind what it is
 * @param quantity how much there was of it
 * @param taken what its registered children took, in metres or kilograms as {@link Amount#base()}; zero or more
 * @param made when it was made
 * @param copperMillimetres the diameter of its copper in mm; null when it is not known
 */
public record Stock(
        LotId id, LotKind kind, Amount quantity, double taken, OffsetDateTime made, Double copperMillimetres) {

    public Stock {
        if (!(taken >= 0 && Double.isFinite(taken))) {
            throw new IllegalArgumentException("what was taken of lot " + id + " must be zero or more, not " + taken);
        }
    }

    /** A lot before anything was taken of it. */
    public static Stock of(Lot lot) {
        Double copper =
                CopperDiameter.of(lot).isPresent() ? CopperDiameter.of(lot).getAsDouble() : null;
        return new Stock(lot.id(), lot.kind(), lot.quantity(), 0, lot.made(), copper);
    }

    /** The same lot after some more of it was taken. */
    public Stock less(Amount amount) {
        return new Stock(id, kind, quantity, taken + amount.base(), made, copperMillimetres);
    }
}
