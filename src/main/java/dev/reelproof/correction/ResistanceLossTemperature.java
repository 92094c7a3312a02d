package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: line theory, the loss of a pair in its two limits (from memory): a = √(π f R C) where resistance outweighs reactance, as at
 * voice frequencies, and a in proportion to the resistance of the skin, √(π f μ ρ), where the skin effect is full. Both go by the
 * square root of the resistivity. Resistance against temperature: 7 CFR 1755.403(d)(6)(ii)(C) (read, coefficient 0.0040).
 *
 * <p>Insertion loss against temperature by the square root of the copper's resistance, used backwards.
 *
 * <ul>
 *   <li>Equation: a0 = a · √{[1 + α (t0 − 20)] / [1 + α (t − 20)]}
 *   <li>Symbols: a measured and a0 referred insertion loss in dB, t cable and t0 reference temperature in °C, α temperature
 *       coefficient of the resistance at 20 °C per °C
 *   <li>Range: −40 to 100 °C, ends included, as for the resistance (common practice, no source); frequencies in one of the two limits
 *   <li>Edge cases: at the reference temperature the value comes back unchanged; outside the range it is refused
 *   <li>Known error: the loss of the dielectric is left as it is; between the limits, about 10 to 300 kHz for telephone gauges, the
 *       loss follows the resistance itself more nearly, which is up to twice the change (all from memory)
 * </ul>
 *
 * @param coefficient α, per °C; above 0 and at most 0.01
 */
public record ResistanceLossTemperature(double coefficient) implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "resistance-loss-temperature";

    private static final double SQUARE_ROOT_EXPONENT = 0.5;

    /** @throws IllegalArgumentException when the coefficient is not possible */
    public ResistanceLossTemperature {
        resistance(coefficient);
    }

    private static CopperTemperature resistance(double coefficient) {
        return new CopperTemperature(coefficient);
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "line theory, loss by the square root of the resistance (from memory); resistance against temperature: "
                + resistance(coefficient).citation();
    }

    @Override
    public String formula() {
        String alpha = PlainDecimal.of(coefficient);
        return "a0 = a · √{[1 + " + alpha + " (t0 − 20)] / [1 + " + alpha + " (t − 20)]}, t in °C";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        resistance(coefficient).requireCovers(temperature);
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        return Line.scaling(Math.sqrt(resistance(coefficient).correct(1, conditions)));
    }

    /** ∂a0/∂a = √q and ½ a q′/√q by t and by ln α, where q is the ratio of the resistances and q′ its derivative by the same. */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        Sensitivity ofResistance = resistance(coefficient).sensitivity(1, conditions);
        double root = Math.sqrt(ofResistance.value());
        double perRatio = SQUARE_ROOT_EXPONENT * value / root;
        return new Sensitivity(
                root, perRatio * ofResistance.perDegree(), 0, 0, perRatio * ofResistance.perCoefficient());
    }
}
