package dev.reelproof.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Source: JCGM 100:2008 (GUM), 4.3.3 (u = U/k), 5.1.2 (root sum of squares) and 5.2.2 (correlated input quantities), from memory; the
 * shape of the parts is common practice, no source.
 *
 * <p>What an instrument of a class adds to the uncertainty of the readings of one property.
 *
 * <ul>
 *   <li>Equation: u = √[c² + (p x)² + s(f)²] / k; of a level in dB the parts are combined as amplitudes, with n = 10^((x − N)/20) for
 *       the noise, by {@link LevelSide}. The error of reading i is uᵢ (√r Z + √(1 − r) Eᵢ), so that a figure with the derivatives gᵢ by
 *       the readings has u² = r (Σ gᵢ uᵢ)² + (1 − r) Σ (gᵢ uᵢ)²
 *   <li>Symbols: u standard uncertainty and c constant part, s(f) part over frequency f in MHz, all in the property's canonical
 *       unit; p proportional part as a ratio; x reading; N noise floor as a level in dB; k coverage factor of the figures; r
 *       correlation between any two readings of the property in one result; Z the error common to them and Eᵢ that of one alone, both
 *       with a mean of 0 and a standard deviation of 1, all independent
 *   <li>Range: any reading; frequencies within the curve, where there is one; r from 0 to 1
 *   <li>Edge cases: outside the curve there is no uncertainty (empty), as for a curve and a reading without frequency, and where a level
 *       may be noise altogether: for an insertion loss, and to the higher side of any level
 *   <li>Known error: of a level, U divided by k is taken for its standard uncertainty, though amplitudes near the noise floor do not
 *       follow a normal distribution in dB. One r stands for all parts, though a scale error is common and a contact's is not. Errors
 *       of different properties are taken as independent, even where one instrument reads both
 * </ul>
 *
 * @param constant c, as expanded uncertainty in the canonical unit, 0 or more
 * @param proportional p, as expanded uncertainty, a ratio, 0 or more
 * @param overFrequency s(f), as expanded uncertainty in the canonical unit; empty when there is none
 * @param side of a level, where its limit is missed by a value that passes as read; empty when the property is no level
 * @param noiseFloor N in dB, whose amplitude is an expanded uncertainty; empty when there is none or the property is no level
 * @param unit the property's canonical unit
 * @param coverageFactor k of these figures, above 0
 * @param correlation r, from 0 to 1
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
        double correlation,
        Source source) {
    /** The correlation of readings that all err alike, as those of one instrument do when nothing else is known. */
    public static final double ALL_COMMON = 1;

    private static final double PERCENT = 100;

    /** @throws IllegalArgumentException when a figure is not possible */
    public InstrumentUncertainty {
        if (!(constant >= 0 && proportional >= 0 && Double.isFinite(constant) && Double.isFinite(proportional))) {
            throw new IllegalArgumentException("the parts of an uncertainty must be 0 or more and finite, not "
                    + constant + " and " + proportional);
        }
        requireCoverageFactor(coverageFactor);
        if (!(correlation >= 0 && correlation <= ALL_COMMON)) {
            throw new IllegalArgumentException("the correlation between the readings of an instrument is " + correlation
                    + "; it must be from 0 (each reading errs for itself) to 1 (all err alike)");
        }
        if (noiseFloor.isPresent() && side.isEmpty()) {
            throw new IllegalArgumentException("only a level in dB has a noise floor");
        }
    }

    static void requireCoverageFactor(double coverageFactor) {
        if (!(coverageFactor > 0 && Double.isFinite(coverageFactor))) {
            throw new IllegalArgumentException("a coverage factor must be above 0 and finite, not " + coverageFactor);
        }
    }

    /**
     * The standard uncertainty of a reading that passes, in the canonical unit; empty where the model says nothing.
     *
     * @param reading in the canonical unit
     * @param megahertz the frequency, MHz; NaN where there is none
     */
    public OptionalDouble standard(double reading, double megahertz) {
        return standard(reading, megahertz, side.orElse(LevelSide.LOWER));
    }

    /**
     * The standard uncertainty of a reading to one side, in the canonical unit; empty where the model says nothing.
     *
     * @param reading in the canonical unit
     * @param megahertz the frequency, MHz; NaN where there is none
     * @param towards the side on which the true level may lie; what is no level has the same uncertainty on both
     */
    public OptionalDouble standard(double reading, double megahertz, LevelSide towards) {
        double standard = standard(reading, towards, squares(megahertz, towards));
        return Double.isNaN(standard) ? OptionalDouble.empty() : OptionalDouble.of(standard);
    }

    /** The same on a grid, with what depends on frequency alone worked out once. Frequencies in MHz. */
    public UncertaintyOverGrid over(double[] megahertz) {
        return new UncertaintyOverGrid(this, megahertz);
    }

    /** The squares of the parts that no reading enters; NaN where the curve does not reach. */
    double squares(double megahertz, LevelSide towards) {
        double ofFrequency = 0;
        if (overFrequency.isPresent()) {
            Bound.Curve curve = overFrequency.get();
            if (!(megahertz >= curve.from() && megahertz <= curve.to())) {
                return Double.NaN;
            }
            ofFrequency = curve.at(megahertz);
        }
        return side.isPresent()
                ? towards.square(constant) + towards.square(ofFrequency)
                : constant * constant + ofFrequency * ofFrequency;
    }

    /**
     * The standard uncertainty of a reading; NaN where there is none.
     *
     * @param squares of the parts that no reading enters
     */
    double standard(double reading, LevelSide towards, double squares) {
        double ofReading = proportional * reading;
        if (side.isEmpty()) {
            return Math.sqrt(squares + ofReading * ofReading) / coverageFactor;
        }
        double all = squares;
        if (ofReading != 0) {
            all += towards.square(ofReading);
        }
        if (noiseFloor.isPresent()) {
            all += LevelSide.squareOfNoise(reading, noiseFloor.getAsDouble());
        }
        return towards.decibels(all) / coverageFactor;
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

    /** How far the readings of one result err alike, for people. */
    public String correlationWords() {
        if (correlation == ALL_COMMON) {
            return "all readings of one result err alike (correlation 1)";
        }
        return correlation == 0
                ? "each reading errs for itself (correlation 0)"
                : "the readings of one result err alike in part (correlation " + Formulas.number(correlation) + ")";
    }
}
