package dev.reelproof.correction;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.OptionalDouble;

/** MeasurementConditions for tests, said briefly. Everything that a test does not name is at the reference, 20 °C. */
final class Reel {
    private static final Temperature AT_20 = Temperature.ofCelsius(20);

    private Reel() {}

    static MeasurementConditions at(double celsius) {
        return at(celsius, 20);
    }

    static MeasurementConditions at(double celsius, double referenceCelsius) {
        Length any = Length.ofMetres(100);
        return new MeasurementConditions(
                Temperature.ofCelsius(celsius),
                any,
                Temperature.ofCelsius(referenceCelsius),
                any,
                OptionalDouble.empty());
    }

    static MeasurementConditions of(Length length, Length reference) {
        return new MeasurementConditions(AT_20, length, AT_20, reference, OptionalDouble.empty());
    }

    static MeasurementConditions of(double metres, double referenceMetres) {
        return of(Length.ofMetres(metres), Length.ofMetres(referenceMetres));
    }
}
