package dev.reelproof.genealogy.balance;

import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.admission.Stock;
import dev.reelproof.quantity.Kind;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Common practice, no source: from insulating on, a lot is no longer than what runs along it, since laying up takes length and
 * nothing gives any.
 *
 * <ul>
 *   <li>Equation: 0.99 ≤ Σ L_in/(n L_out), and ≤ 1.2 where all that runs along is known to be n
 *   <li>Symbols: L_out length of the lot; L_in lengths that went in of what runs along it, all in m; n how many run side by side:
 *       two conductors in a pair, else at least one
 *   <li>Range: insulated conductor, pair, unit, core, jacketed cable and reel, with parents measured by length
 *   <li>Source: the tolerances (1 % for two length counters; 20 % for lay, ends and scrap) are common practice, no source
 *   <li>Edge cases: without a parent that runs along, nothing is said; what went into units and cores has no upper bound, since the
 *       number of their elements is not told
 *   <li>Known error: a pair that lacks one of its conductors shows, a core that lacks one of its pairs does not
 * </ul>
 */
public final class LengthBalance {
    private static final double LEAST = 0.99;
    private static final double MOST = 1.2;
    private static final int CONDUCTORS_OF_A_PAIR = 2;

    private static final Set<LotKind> OF_KNOWN_NUMBER =
            EnumSet.of(LotKind.INSULATED_CONDUCTOR, LotKind.TWISTED_PAIR, LotKind.JACKETED_CABLE, LotKind.REEL);
    private static final Set<LotKind> WIRE =
            EnumSet.of(LotKind.BREAKDOWN_WIRE, LotKind.ANNEALED_CONDUCTOR, LotKind.INSULATED_CONDUCTOR);
    private static final Set<LotKind> CABLE =
            EnumSet.of(LotKind.TWISTED_PAIR, LotKind.UNIT, LotKind.CORE, LotKind.JACKETED_CABLE, LotKind.REEL);

    private LengthBalance() {}

    public static List<Implausibility> check(Lot lot, Map<LotId, Stock> parents) {
        Set<LotKind> alongside =
                switch (lot.kind()) {
                    case INSULATED_CONDUCTOR, TWISTED_PAIR -> WIRE;
                    case UNIT, CORE, JACKETED_CABLE, REEL -> CABLE;
                    default -> EnumSet.noneOf(LotKind.class);
                };
        List<LotInput> along = lot.inputs().stream()
                .filter(input -> alongside.contains(parents.get(input.lot()).kind())
                        && input.quantity().kind() == Kind.LENGTH)
                .toList();
        if (along.isEmpty() || lot.quantity().kind() != Kind.LENGTH) {
            return List.of();
        }
        int number = lot.kind() == LotKind.TWISTED_PAIR ? CONDUCTORS_OF_A_PAIR : 1;
        double in = along.stream().mapToDouble(input -> input.quantity().base()).sum();
        double needed = lot.quantity().base() * number;
        LotId only = along.size() == 1 ? along.get(0).lot() : null;
        String figures = "lot " + lot.id() + " is " + lot.quantity() + " long"
                + (number > 1 ? " and has " + number + " conductors" : "") + ", and "
                + lot.quantity().inMyUnit(in) + " went in";
        if (!(in >= needed * LEAST)) {
            return List.of(new Implausibility(
                    only, figures + ": it is longer than what it was made from, by more than 1 %; check the lengths"));
        }
        if (OF_KNOWN_NUMBER.contains(lot.kind()) && in > needed * MOST) {
            return List.of(
                    new Implausibility(
                            only,
                            figures
                                    + ": more than 20 % beyond its length is not accounted for; check the lengths and the scrap"));
        }
        return List.of();
    }
}
