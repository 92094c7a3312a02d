package dev.reelproof.limit;

import dev.reelproof.quantity.Decibels;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Source: JCGM 100:2008 (GUM), 4.3.3 (u = U/k) and 5.1.2 (root sum of squares), from memory; the shape of the parts is common
 * practice, no source.
 *
 * <p>What an instrument of a class adds to the uncertainty of one reading of one property.
 *
 * <ul>
 *   <li>Equation: u = √[c² + (p x)² + s(f)²] / k; of a level in dB the parts are combined as amplitudes, with n = 10^((x − N)/20) for
 *       the noise, by {@link LevelSide}
 *   <li>Symbols: u standard uncertainty and c constant part, s(f) part over frequency f in MHz, all in the property's canonical
 *       unit; p proportional part as a ratio; x reading; N noise floor as a level in dB; k coverage factor of the figures
 *   <li>Range: any reading; frequencies within the curve, where there is one
 *   <li>Edge cases: outside the curve there is no uncertainty (empty), as for a curve and a reading without frequency, and for an
 *       insertion loss that may be noise altogether
 *   <li>Known error: of a level, U divided by k is taken for its standard uncertainty, though amplitudes near the noise floor do not
 *       follow a normal distribution in dB
 * </ul>
 *
 * @param constant c, as expanded uncertainty in the canonical unit, 0 or more
 * @param proportional p, as expanded uncertainty, a ratio, 0 or more
 * @param overFrequency s(f), as expanded uncertainty in the canonical unit; empty when there is none
 * @param side of a level, where its limit lies; empty when the property is no level
 * @param noiseFloor N in dB, whose amplitude is an expanded uncertainty; empty when there is none or the property is no level
 * @param unit the property's canonical unit
 * @param coverageFactor k of these figures, above 0
 * @param source where the figures come from
 */
public record InstrumentUncertainty(
        double constant,
        double proportional,
        Optional<Bound.Curve> overFrequency,
        Optional<LevelSide> side,
        OptionalDouble noiseFloor,
        String unit,
        double coverageFactor,
        Source source) {
    private static final double PERCENT = 100;

    /** @throws IllegalArgumentException when a figure is not possible */
    public InstrumentUncertainty {
        if (!(constant >= 0 && proportional >= 0 && Double.isFinite(constant) && Double.isFinite(proportional))) {
            throw new IllegalArgumentException("the parts of an uncertainty must be 0 or more and finite, not "
                    + constant + " and " + proportional);
        }
        if (!(coverageFactor > 0 && Double.isFinite(coverageFactor))) {
            throw new IllegalArgumentException("a coverage factor must be above 0 and finite, not " + coverageFactor);
        }
        if (noiseFloor.isPresent() && side.isEmpty()) {
            throw new IllegalArgumentException("only a level in dB has a noise floor");
        }
    }

    /**
     * The standard uncertainty of a reading, in the canonical unit; empty where the model says nothing.
     *
     * @param reading in the canonical unit
     * @param megahertz the frequency, MHz; NaN where there is none
     */
    public OptionalDouble standard(double reading, double megahertz) {
        double ofFrequency = 0;
        if (overFrequency.isPresent()) {
            Bound.Curve curve = overFrequency.get();
            if (!(megahertz >= curve.from() && megahertz <= curve.to())) {
                return OptionalDouble.empty();
            }
            ofFrequency = curve.at(megahertz);
        }
        double ofReading = proportional * reading;
        OptionalDouble expanded;
        if (side.isPresent()) {
            double noise = noiseFloor.isEmpty() ? 0 : Decibels.amplitudeRatio(reading - noiseFloor.getAsDouble());
            expanded = side.get().combined(noise, constant, ofReading, ofFrequency);
        } else {
            expanded = OptionalDouble.of(
                    Math.sqrt(constant * constant + ofReading * ofReading + ofFrequency * ofFrequency));
        }
        return expanded.isEmpty() ? expanded : OptionalDouble.of(expanded.getAsDouble() / coverageFactor);
    }

    /** The parts for people. */
    public String words() {
        List<String> parts = new ArrayList<>();
        if (constant > 0) {
            parts.add(Formulas.number(constant) + " " + unit);
        }
        if (proportional > 0) {
            parts.add(Formulas.number(proportional * PERCENT) + " % of the reading");
        }
        overFrequency.ifPresent(curve -> parts.add("(" + curve.describe() + ") " + unit));
        noiseFloor.ifPresent(floor -> parts.add("a noise floor of " + Formulas.number(floor) + " dB"));
        return String.join(" and ", parts) + (side.isPresent() && parts.size() > 1 ? ", combined as amplitudes" : "")
                + ", k = " + Formulas.number(coverageFactor);
    }
}
