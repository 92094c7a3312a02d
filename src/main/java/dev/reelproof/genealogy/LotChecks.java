package dev.reelproof.genealogy;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What must hold before a new lot joins the others: its parents are known, none is its own descendant, and none gives more than
 * it had.
 *
 * <p>Common practice, no source: conservation of length and mass. With {@code q} the parent's quantity, {@code t} what its children
 * took before and {@code x} what this lot takes, all in m or all in kg, {@code t + x ≤ q (1 + 1e-9)}. The tolerance covers the
 * rounding of unit conversions and of the sum of some thousands of takings in double precision (each below 1.2e-16 relative), and
 * is far below what any counter or scale can tell.
 */
public final class LotChecks {
    private static final double ROUNDING = 1e-9;

    private LotChecks() {}

    /**
     * Refuses a lot that cannot be so.
     *
     * @param lot the new lot
     * @param stocks what is registered of its parents; a parent that is not in here is unknown
     * @param ancestorsOfParents all lots from which the parents descend
     * @throws LotFaultsException naming every input that is wrong
     */
    public static void check(Lot lot, Map<LotId, Stock> stocks, Set<LotId> ancestorsOfParents) {
        List<LotFault> faults = new ArrayList<>();
        Set<LotId> seen = new HashSet<>();
        for (int i = 0; i < lot.inputs().size(); i++) {
            LotInput input = lot.inputs().get(i);
            String where = "/inputs/" + i;
            if (input.lot().equals(lot.id())) {
                faults.add(new LotFault(where + "/lot", "lot " + lot.id() + " cannot go into itself"));
            } else if (!seen.add(input.lot())) {
                faults.add(new LotFault(
                        where + "/lot", "lot " + input.lot() + " is listed twice; give it once, with the sum of both"));
            } else if (!stocks.containsKey(input.lot())) {
                faults.add(new LotFault(
                        where + "/lot", "unknown lot " + input.lot() + "; register it before what is made from it"));
            } else {
                checkStock(lot, input, stocks.get(input.lot()), where, faults);
            }
        }
        if (ancestorsOfParents.contains(lot.id())) {
            faults.add(new LotFault(
                    "/inputs", "lot " + lot.id() + " would descend from itself; its inputs were already made from it"));
        }
        if (!faults.isEmpty()) {
            throw new LotFaultsException(faults);
        }
    }

    private static void checkStock(Lot lot, LotInput input, Stock stock, String where, List<LotFault> faults) {
        if (lot.made().isBefore(stock.made())) {
            faults.add(new LotFault(
                    where + "/lot",
                    "lot " + stock.id() + " was made at " + stock.made() + ", after this one (" + lot.made()
                            + "); a lot is made after what goes into it"));
        }
        if (input.quantity().kind() != stock.quantity().kind()) {
            faults.add(new LotFault(
                    where + "/quantity",
                    "lot " + stock.id() + " is measured as "
                            + stock.quantity().kind().words() + " ("
                            + stock.quantity() + "); what goes in of it cannot be given as "
                            + input.quantity().kind().words() + " (" + input.quantity() + ")"));
        } else if (!(stock.taken() + input.quantity().base() <= stock.quantity().base() * (1 + ROUNDING))) {
            double left = Math.max(0, stock.quantity().base() - stock.taken());
            faults.add(new LotFault(
                    where + "/quantity",
                    "lot " + stock.id() + " had " + stock.quantity() + ", of which "
                            + stock.quantity().inMyUnit(left) + " are left; " + input.quantity() + " is too much"));
        }
    }
}
