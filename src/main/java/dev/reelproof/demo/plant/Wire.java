package dev.reelproof.demo.plant;

/**
 * Source: ASTM B258 (wire diameters) and IEC 60028 (annealed copper), both from memory. A round copper wire.
 *
 * <p>Equations: d = 0.127 mm · 92^((36 − n)/39) (1); R′ = ρ20 (1 + α20 (t − 20)) / (π d²/4) (2); m′ = D π d²/4 (3).
 *
 * <p>Symbols: n gauge number, d diameter in mm, ρ20 = 1/58 ohm·mm²/m, α20 = 0.00393 per °C, t temperature in °C, D = 8.89 g/cm³,
 * R′ in ohm per metre of wire, m′ in kg per metre of wire. Range: AWG 10 to 30, −40 to 100 °C. Edge cases: none inside the
 * range. Known error: drawn wire differs from nominal; the plant's runs carry that as a factor on d.
 *
 * @param diameterMm diameter in mm
 */
record Wire(double diameterMm) {
    static final double COPPER_KG_PER_M_PER_MM2 = 8.89e-3;

    private static final double MM_AT_AWG_36 = 0.127;
    private static final double STEPS_RATIO = 92;
    private static final double STEPS = 39;
    private static final double FIRST_GAUGE = 36;
    private static final double OHM_MM2_PER_M = 1.0 / 58;
    private static final double PER_DEGREE = 0.00393;
    static final double REFERENCE_CELSIUS = 20;

    Wire {
        if (!(diameterMm > 0)) {
            throw new IllegalArgumentException("a wire's diameter must be positive, not " + diameterMm + " mm");
        }
    }

    static Wire ofGauge(int awg) {
        return new Wire(MM_AT_AWG_36 * StrictMath.pow(STEPS_RATIO, (FIRST_GAUGE - awg) / STEPS)); // (1)
    }

    Wire drawnTo(double factor) {
        return new Wire(diameterMm * factor);
    }

    double areaMm2() {
        return Math.PI * diameterMm * diameterMm / 4;
    }

    /** Resistivity in ohm·mm²/m. */
    static double resistivity(double celsius) {
        return OHM_MM2_PER_M * (1 + PER_DEGREE * (celsius - REFERENCE_CELSIUS));
    }

    /** Direct-current resistance in ohm per metre of wire. */
    double ohmPerMetre(double celsius) {
        return resistivity(celsius) / areaMm2(); // (2)
    }

    double kilogramsPerMetre() {
        return COPPER_KG_PER_M_PER_MM2 * areaMm2(); // (3)
    }
}
