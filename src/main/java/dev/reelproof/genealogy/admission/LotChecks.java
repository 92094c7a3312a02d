package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.Stretch;
import dev.reelproof.genealogy.balance.CopperBalance;
import dev.reelproof.genealogy.balance.LengthBalance;
import dev.reelproof.quantity.Kind;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Checks a new lot against its parents: each is known, is older than the lot and gives no more than it had, and every position lies
 * on both lots. What can hardly be so refuses nothing and is told beside.
 *
 * <p>Common practice, no source: conservation of length and mass. With {@code q} the parent's quantity, {@code t} what its children
 * took before and {@code x} what this lot takes, all in m or all in kg, {@code t + x ≤ q (1 + e)}. For a report by itself, e = 1e-9:
 * this covers the rounding of unit conversions and of the sum of some thousands of takings in double precision (each below 1.2e-16
 * relative), and is far below what any counter or scale can tell. For reports in bulk, made by several counters at several times,
 * e = 2 %; what lies between the two is taken and told as implausible.
 */
public final class LotChecks {
    /** How much more than it had may be taken of a lot, relative: rounding alone. */
    public static final double EXACT = 1e-9;

    /** How much more than it had may be taken of a lot by reports in bulk, relative: what counters and scales differ by. */
    public static final double OF_COUNTERS = 0.02;

    private LotChecks() {}

    /**
     * What is wrong with a lot; nothing when all is well.
     *
     * @param lot the new lot
     * @param stocks what is left of its registered parents; a parent that is not in here is unknown
     * @param tolerance how much more than it had may be taken of a parent, relative; zero or more
     */
    public static List<LotFault> faults(Lot lot, Map<LotId, Stock> stocks, double tolerance) {
        List<LotFault> faults = new ArrayList<>();
        Set<LotId> seen = new HashSet<>();
        for (int i = 0; i < lot.inputs().size(); i++) {
            LotInput input = lot.inputs().get(i);
            if (checkInItself(lot, i, seen, faults)) {
                String where = "/inputs/" + i;
                Stock stock = stocks.get(input.lot());
                if (stock == null) {
                    faults.add(new LotFault(
                            where + "/lot",
                            "unknown lot " + input.lot() + "; register it before what is made from it"));
                } else {
                    checkStock(lot, input, stock, where, tolerance, faults);
                }
            }
        }
        return faults;
    }

    /** What is wrong with a lot whatever its parents are; nothing when all is well. */
    public static List<LotFault> faultsInItself(Lot lot) {
        List<LotFault> faults = new ArrayList<>();
        Set<LotId> seen = new HashSet<>();
        for (int i = 0; i < lot.inputs().size(); i++) {
            checkInItself(lot, i, seen, faults);
        }
        return faults;
    }

    /** Whether the input's parent is one that can be looked up. */
    private static boolean checkInItself(Lot lot, int ordinal, Set<LotId> seen, List<LotFault> faults) {
        LotInput input = lot.inputs().get(ordinal);
        String where = "/inputs/" + ordinal;
        if (input.placement() != null) {
            checkPlace(
                    where + "/position",
                    lot.id(),
                    lot.quantity(),
                    input.placement().kind(),
                    input.placement().stretch(),
                    faults);
        }
        if (input.lot().equals(lot.id())) {
            faults.add(new LotFault(where + "/lot", "lot " + lot.id() + " cannot go into itself"));
            return false;
        }
        if (!seen.add(input.lot())) {
            faults.add(new LotFault(
                    where + "/lot", "lot " + input.lot() + " is listed twice; give it once, with the sum of both"));
            return false;
        }
        return true;
    }

    private static void checkPlace(
            String where, LotId id, Amount quantity, Kind kind, Stretch stretch, List<LotFault> faults) {
        if (kind != quantity.kind()) {
            faults.add(new LotFault(
                    where,
                    "lot " + id + " is measured as " + quantity.kind().words() + " (" + quantity
                            + "); a position on it cannot be given as " + kind.words()));
        } else if (!(stretch.to() <= quantity.base() * (1 + OF_COUNTERS))) {
            faults.add(new LotFault(
                    where,
                    "lot " + id + " ends at " + quantity + "; there is no place at " + quantity.inMyUnit(stretch.to())
                            + " on it"));
        }
    }

    private static void checkStock(
            Lot lot, LotInput input, Stock stock, String where, double tolerance, List<LotFault> faults) {
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
        } else if (!(stock.taken() + input.quantity().base() <= stock.quantity().base() * (1 + tolerance))) {
            faults.add(new LotFault(where + "/quantity", tooMuch(input, stock)));
        }
        if (input.placement() != null) {
            checkPlace(
                    where + "/position",
                    stock.id(),
                    stock.quantity(),
                    input.placement().kindOnParent(),
                    input.placement().stretchOfParent(),
                    faults);
        }
    }

    private static String tooMuch(LotInput input, Stock stock) {
        double left = Math.max(0, stock.quantity().base() - stock.taken());
        return "lot " + stock.id() + " had " + stock.quantity() + ", of which "
                + stock.quantity().inMyUnit(left) + " are left; " + input.quantity() + " is too much";
    }

    /**
     * What can hardly be so in a lot in which nothing is wrong.
     *
     * @param stocks what is left of each of its parents
     */
    public static List<Implausibility> implausible(Lot lot, Map<LotId, Stock> stocks) {
        List<Implausibility> found = new ArrayList<>();
        for (LotInput input : lot.inputs()) {
            Stock stock = stocks.get(input.lot());
            if (!(stock.taken() + input.quantity().base() <= stock.quantity().base() * (1 + EXACT))) {
                found.add(new Implausibility(stock.id(), tooMuch(input, stock) + ", by less than the counters' 2 %"));
            }
            if (lot.run() != null
                    && lot.run().started() != null
                    && lot.run().started().isBefore(stock.made())) {
                found.add(new Implausibility(
                        stock.id(),
                        "run " + lot.run().id() + " started at " + lot.run().started() + ", before lot " + stock.id()
                                + " was made (" + stock.made() + "); this fits only a lot that joined the run later"));
            }
            if (input.placement() != null
                    && input.placement().stretchOfParent().length()
                            > input.quantity().base() * (1 + OF_COUNTERS)) {
                found.add(new Implausibility(
                        stock.id(),
                        "the position says that "
                                + input.quantity()
                                        .inMyUnit(input.placement()
                                                .stretchOfParent()
                                                .length())
                                + " of lot " + stock.id() + " went in, the quantity " + input.quantity()
                                + "; they differ by more than the counters' 2 %"));
            }
        }
        found.addAll(CopperBalance.check(lot, stocks));
        found.addAll(LengthBalance.check(lot, stocks));
        return found;
    }
}
