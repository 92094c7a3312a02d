package dev.reelproof.genealogy.balance;

import dev.reelproof.correction.CopperWire;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.PlainNumber;
import dev.reelproof.genealogy.admission.Stock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Common practice, no source: what goes into drawing comes out of it, since copper keeps its volume. Density and gauges as
 * {@link CopperWire} has them.
 *
 * <ul>
 *   <li>Equation: 0.8 ≤ m_out/m_in ≤ 1.025, with m = δ π d²/4 · L where a lot is measured by length
 *   <li>Symbols: m_out copper in the lot, m_in copper that went in, both in kg; δ density; d diameter of the copper; L length
 *   <li>Range: breakdown wire, annealed and insulated conductor, when the mass or the diameter of the copper is told on both sides
 *   <li>Source: the upper tolerance is 2 % for a diameter that is 1 % off and 0.5 % for the scale (computed); the lower one, for ends
 *       and scrap, is common practice, no source
 *   <li>Edge cases: where one figure is not told, nothing is said
 *   <li>Known error: nominal diameters differ from drawn ones, which the tolerance allows for
 * </ul>
 */
public final class CopperBalance {
    private static final double MOST = 1.025;
    private static final double LEAST = 0.8;
    private static final double GRAMS_PER_KILOGRAM = 1000;

    private CopperBalance() {}

    public static List<Implausibility> check(Lot lot, Map<LotId, Stock> parents) {
        OptionalDouble diameter = CopperDiameter.of(lot);
        OptionalDouble out = copper(lot.kind(), lot.quantity(), diameter.isPresent() ? diameter.getAsDouble() : null);
        List<LotId> sources = new ArrayList<>();
        double in = 0;
        for (LotInput input : lot.inputs()) {
            Stock parent = parents.get(input.lot());
            if (parent.kind().isBareCopper()) {
                OptionalDouble mass = copper(parent.kind(), input.quantity(), parent.copperMillimetres());
                if (mass.isEmpty()) {
                    return List.of();
                }
                in += mass.getAsDouble();
                sources.add(parent.id());
            }
        }
        if (out.isEmpty() || sources.isEmpty()) {
            return List.of();
        }
        LotId only = sources.size() == 1 ? sources.get(0) : null;
        String figures = "lot " + lot.id() + " holds " + PlainNumber.of(out.getAsDouble()) + " kg of copper ("
                + lot.quantity() + "), and " + PlainNumber.of(in) + " kg went in";
        if (out.getAsDouble() > in * MOST) {
            return List.of(new Implausibility(
                    only, figures + ": more came out than went in, by more than 2.5 %; check quantity and gauge"));
        }
        if (out.getAsDouble() < in * LEAST) {
            return List.of(new Implausibility(
                    only, figures + ": more than 20 % is not accounted for; check quantity, gauge and scrap"));
        }
        return List.of();
    }

    private static OptionalDouble copper(LotKind kind, Amount amount, Double millimetres) {
        return switch (amount.kind()) {
            case MASS -> kind.isBareCopper() ? OptionalDouble.of(amount.base()) : OptionalDouble.empty();
            default -> (kind.isBareCopper() || kind == LotKind.INSULATED_CONDUCTOR) && millimetres != null
                    ? OptionalDouble.of(
                            amount.base() * new CopperWire(millimetres).gramsPerMetre() / GRAMS_PER_KILOGRAM)
                    : OptionalDouble.empty();
        };
    }
}
