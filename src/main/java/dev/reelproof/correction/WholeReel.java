package dev.reelproof.correction;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Source: the length laws of this package, one a property, each with its own source.
 *
 * <p>What the value of a whole reel becomes when the reel is cut, the cable being uniform along its length.
 *
 * <ul>
 *   <li>Equation: x1 = x · L1/L (resistance, mutual capacitance, capacitance unbalance to ground, insertion loss, delay, skew);
 *       x · √(L1/L) (capacitance unbalance pair to pair); x · L/L1 (insulation resistance); x + 10 log10(L/L1) (crosstalk at the far
 *       end)
 *   <li>Symbols: x measured and x1 expected value in the same unit, L length of the reel and L1 of the piece in m
 *   <li>Range: L1 from above 0 to L, at the temperature of the measurement
 *   <li>Edge cases: at L1 = L the value comes back unchanged; a property without a law here does not change with length, or nothing is
 *       known of how
 *   <li>Known error: no cable is uniform, so the piece must be measured; see the laws' own
 * </ul>
 */
public final class WholeReel {
    private static final Temperature ANY = Temperature.ofCelsius(20);

    private WholeReel() {}

    /** The law by which a property's value of the whole reel goes with its length; empty when cutting does not change it. */
    public static Optional<CorrectionLaw> lengthLaw(Property property) {
        return switch (property) {
            case CONDUCTOR_RESISTANCE,
                    LOOP_RESISTANCE,
                    MUTUAL_CAPACITANCE,
                    CAPACITANCE_UNBALANCE_TO_GROUND,
                    INSERTION_LOSS,
                    PROPAGATION_DELAY,
                    DELAY_SKEW -> Optional.of(new LinearLength());
            case CAPACITANCE_UNBALANCE_PAIR_TO_PAIR -> Optional.of(new SquareRootLength());
            case INSULATION_RESISTANCE -> Optional.of(new InsulationResistanceLength());
            case FEXT, ACR_F, PS_ACR_F -> Optional.of(new FarEndCrosstalkLength());
            default -> Optional.empty();
        };
    }

    /**
     * The value that a piece of a reel is expected to have; the value itself where no law is known.
     *
     * @param value the value of the whole reel, in the property's canonical unit
     */
    public static double valueOfPiece(Property property, double value, Length reel, Length piece) {
        return lengthLaw(property)
                .map(law ->
                        law.correct(value, new MeasurementConditions(ANY, reel, ANY, piece, OptionalDouble.empty())))
                .orElse(value);
    }
}
