package dev.reelproof.correction;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.OptionalDouble;

/**
 * The conditions under which a value was measured, and the reference that it is corrected to.
 *
 * @param temperature cable temperature while measured
 * @param length the length that the value belongs to: that of the reel, or that which its unit refers it to
 * @param referenceTemperature temperature to refer to
 * @param referenceLength length to refer to
 * @param lossPerMetre measured insertion loss of the disturbed pair at the frequency and temperature of the value, dB/m;
 *     empty when it is not known
 */
public record MeasurementConditions(
        Temperature temperature,
        Length length,
        Temperature referenceTemperature,
        Length referenceLength,
        OptionalDouble lossPerMetre) {

    public MeasurementConditions withLossPerMetre(double newLossPerMetre) {
        return new MeasurementConditions(
                temperature, length, referenceTemperature, referenceLength, OptionalDouble.of(newLossPerMetre));
    }
}
