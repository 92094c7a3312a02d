package dev.reelproof.correction;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.OptionalDouble;

/** Circumstances for tests, said briefly. Everything that a test does not name is at the reference, 20 °C. */
final class Reel {
    private static final Temperature AT_20 = Temperature.ofCelsius(20);

    private Reel() {}

    static Circumstances at(double celsius) {
        return at(celsius, 20);
    }

    static Circumstances at(double celsius, double referenceCelsius) {
        Length any = Length.ofMetres(100);
        return new Circumstances(
                Temperature.ofCelsius(celsius),
                any,
                Temperature.ofCelsius(referenceCelsius),
                any,
                OptionalDouble.empty());
    }

    static Circumstances of(Length length, Length reference) {
        return new Circumstances(AT_20, length, AT_20, reference, OptionalDouble.empty());
    }

    static Circumstances of(double metres, double referenceMetres) {
        return of(Length.ofMetres(metres), Length.ofMetres(referenceMetres));
    }
}
