package dev.reelproof.correction;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;

/**
 * Source: ASTM B258 for the gauge diameters, IEC 60028 for the resistivity (both from memory), NBS Handbook 100 for the density
 * (read in notes that quote it).
 *
 * <p>A bare, solid, annealed copper wire or rod of 100 % IACS, by its diameter.
 *
 * <ul>
 *   <li>Equations: d = 0.127 · 92^((36 − n)/39); A = π d²/4; R20 = ρ/A; Rt = R20 [1 + 0.00393 (t − 20)]; m = δ A;
 *       L1 = L0 (d0/d1)² when drawn
 *   <li>Symbols: d diameter in mm, n gauge number, A area in mm², ρ = 1/58 ohm·mm²/m, R resistance in ohm/m, t temperature in °C,
 *       δ = 8.89 g/cm³, m mass in g/m, L lengths before and after drawing in m
 *   <li>Range: gauges −3 (4/0) to 40; diameters above 0 and finite; −40 to 100 °C
 *   <li>Edge cases: a diameter that is not above 0 is refused
 *   <li>Known error: commercial diameters are rounded (24 AWG: 0.0201 in for 0.020101 in, 0.01 % in mass); diameter tolerances of 1 %
 *       make 2 % of mass and resistance; drawing leaves out scrap
 * </ul>
 *
 * @param diameterMillimetres the diameter in mm
 */
public record CopperWire(double diameterMillimetres) {
    /** The sources of the figures. */
    public static final String CITATION = "ASTM B258 (diameter) and IEC 60028 (1/58 ohm·mm²/m), from memory; "
            + "NBS Handbook 100 (8.89 g/cm³, read in notes that quote it)";

    private static final double GAUGE_36_MILLIMETRES = 0.127;
    private static final double GAUGE_RATIO = 92;
    private static final double GAUGE_RATIO_STEPS = 39;
    private static final int GAUGE_OF_RATIO = 36;
    private static final int THICKEST_GAUGE = -3;
    private static final int THINNEST_GAUGE = 40;
    private static final double CONDUCTIVITY = 58;
    private static final double DENSITY_GRAMS_PER_CUBIC_CENTIMETRE = 8.89;
    private static final double GRAMS_PER_KILOGRAM = 1000;
    private static final double AREA_PER_SQUARE_DIAMETER = Math.PI / 4;
    private static final CopperTemperature AGAINST_TEMPERATURE =
            new CopperTemperature(CopperTemperature.ANNEALED_COPPER);

    /** @throws IllegalArgumentException when the diameter is not above 0 and finite */
    public CopperWire {
        if (!(diameterMillimetres > 0 && Double.isFinite(diameterMillimetres))) {
            throw new IllegalArgumentException("a wire diameter is " + PlainDecimal.of(diameterMillimetres)
                    + " mm; it must be above 0 and finite");
        }
    }

    /**
     * The wire of a gauge.
     *
     * @param gauge American wire gauge; 0, −1, −2, −3 stand for 1/0 to 4/0
     * @throws IllegalArgumentException when the gauge lies outside −3 to 40
     */
    public static CopperWire ofGauge(int gauge) {
        if (!(gauge >= THICKEST_GAUGE && gauge <= THINNEST_GAUGE)) {
            throw new IllegalArgumentException("there is no American wire gauge " + gauge + "; use " + THICKEST_GAUGE
                    + " (4/0) to " + THINNEST_GAUGE);
        }
        return new CopperWire(
                GAUGE_36_MILLIMETRES * StrictMath.pow(GAUGE_RATIO, (GAUGE_OF_RATIO - gauge) / GAUGE_RATIO_STEPS));
    }

    /** The cross-section in mm². */
    public double squareMillimetres() {
        return AREA_PER_SQUARE_DIAMETER * diameterMillimetres * diameterMillimetres;
    }

    /** The resistance at 20 °C in ohm/m. */
    public double ohmsPerMetre() {
        return 1 / (CONDUCTIVITY * squareMillimetres());
    }

    /**
     * The resistance at a temperature in ohm/m.
     *
     * @throws OutsideLawException when the temperature lies outside −40 to 100 °C
     */
    public double ohmsPerMetre(Temperature temperature) {
        AGAINST_TEMPERATURE.requireCovers(temperature);
        return ohmsPerMetre() * AGAINST_TEMPERATURE.factor(temperature);
    }

    /** The mass in g/m; the same number as kg/km. */
    public double gramsPerMetre() {
        return DENSITY_GRAMS_PER_CUBIC_CENTIMETRE * squareMillimetres();
    }

    /**
     * The length of wire in a coil of known mass.
     *
     * @param kilograms mass of copper in kg, above 0
     * @throws IllegalArgumentException when the mass is not above 0 and finite
     */
    public Length lengthOfMass(double kilograms) {
        if (!(kilograms > 0 && Double.isFinite(kilograms))) {
            throw new IllegalArgumentException(
                    "a mass of copper is " + PlainDecimal.of(kilograms) + " kg; it must be above 0 and finite");
        }
        return Length.ofMetres(kilograms * GRAMS_PER_KILOGRAM / gramsPerMetre());
    }

    /**
     * The length that a length of this wire becomes when it is drawn to another, its volume kept.
     *
     * @param length length of this wire or rod
     * @param drawn the wire that it is drawn to
     */
    public Length drawnTo(CopperWire drawn, Length length) {
        double ratio = diameterMillimetres / drawn.diameterMillimetres;
        return Length.ofMetres(length.metres() * ratio * ratio);
    }
}
