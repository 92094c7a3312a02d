package dev.reelproof.demo.plant;

/**
 * Source: textbook theory of the two-wire line (skin effect, proximity, internal inductance), from memory. A twisted pair.
 *
 * <p>Equations, per metre of wire: Z = (120/√ε) acosh(s/d) (1); v = c/√ε (2); δ = √(ρ/(π f μ0)) (3); R = 2 R′ (d/(4δ) + 1/4) /
 * √(1 − (d/s)²) (4); α = R/(2Z) + π f tanδ/v, times 1 + k (t − 20) (5); β = (2π f/v)(1 + R/(4π f Z/v)) (6). Per metre of cable
 * all are multiplied by the take-up u = √(1 + (π s/p)²) · core take-up (7).
 *
 * <p>Symbols: d wire diameter and s distance of the wires' centres in mm (s is the insulated diameter), ε effective permittivity, p lay in mm, f in
 * Hz, t in °C, R in ohm/m of both wires, α in Np/m, β in rad/m, k = 0.002 per °C: what a jacket close to the pairs adds to the 0.2 % per °C
 * that copper itself gives through √ρ. Range: d/δ above 1, that is 0.1 MHz upwards for 24 AWG. Edge cases: none inside the range. Known error:
 * of the order of 5 %; it is a model of a plant, not of one cable.
 *
 * @param wire its conductors, taken as equal here
 * @param spacingMm distance of the centres in mm
 * @param permittivity effective relative permittivity
 * @param lossTangent effective loss tangent
 * @param layMm lay in mm
 * @param coreTakeUp take-up of stranding the pairs into the core
 */
record TwistedPair(
        Wire wire, double spacingMm, double permittivity, double lossTangent, double layMm, double coreTakeUp) {
    static final double LIGHT_M_PER_S = 299_792_458;

    private static final double FREE_SPACE_OHM = 120;
    private static final double MU_0 = 4e-7 * Math.PI;
    private static final double OHM_M_PER_OHM_MM2_PER_M = 1e-6;
    private static final double METRES_PER_MM = 1e-3;
    private static final double HERTZ_PER_MHZ = 1e6;
    private static final double JACKET_PER_DEGREE = 0.002;

    TwistedPair {
        if (!(spacingMm > wire.diameterMm() && permittivity >= 1 && layMm > 0 && coreTakeUp >= 1)) {
            throw new IllegalArgumentException("no pair: spacing " + spacingMm + " mm, permittivity " + permittivity
                    + ", lay " + layMm + " mm, core take-up " + coreTakeUp);
        }
    }

    /** Metres of pair per metre of core. */
    double core() {
        return coreTakeUp;
    }

    /** Metres of insulated conductor per metre of pair. */
    double twist() {
        double turns = Math.PI * spacingMm / layMm;
        return Math.sqrt(1 + turns * turns);
    }

    double takeUp() {
        return twist() * coreTakeUp; // (7)
    }

    /** Characteristic impedance at high frequency, in ohm. */
    double impedanceOhm() {
        double ratio = spacingMm / wire.diameterMm();
        return FREE_SPACE_OHM / Math.sqrt(permittivity) * StrictMath.log(ratio + Math.sqrt(ratio * ratio - 1)); // (1)
    }

    double velocity() {
        return LIGHT_M_PER_S / Math.sqrt(permittivity); // (2)
    }

    /** Capacitance in F per metre of cable. */
    double faradPerMetre() {
        return takeUp() / (velocity() * impedanceOhm());
    }

    /** Resistance of both wires in ohm per metre of wire. */
    private double loopOhmPerMetre(double megahertz, double celsius) {
        double depth = Math.sqrt(Wire.resistivity(celsius)
                * OHM_M_PER_OHM_MM2_PER_M
                / (Math.PI * megahertz * HERTZ_PER_MHZ * MU_0)); // (3)
        double skin = wire.diameterMm() * METRES_PER_MM / (4 * depth) + 0.25;
        double closeness = wire.diameterMm() / spacingMm;
        return 2 * wire.ohmPerMetre(celsius) * skin / Math.sqrt(1 - closeness * closeness); // (4)
    }

    /** Attenuation in Np per metre of cable. */
    double neperPerMetre(double megahertz, double celsius) {
        double copper = loopOhmPerMetre(megahertz, celsius) / (2 * impedanceOhm());
        double insulation = Math.PI * megahertz * HERTZ_PER_MHZ * lossTangent / velocity();
        return (copper + insulation) * (1 + JACKET_PER_DEGREE * (celsius - Wire.REFERENCE_CELSIUS)) * takeUp(); // (5)
    }

    /** Resistance over twice the reactance of the outer inductance: how far the line is from lossless. */
    double lossiness(double megahertz, double celsius) {
        double reactance = 2 * Math.PI * megahertz * HERTZ_PER_MHZ * impedanceOhm() / velocity();
        return loopOhmPerMetre(megahertz, celsius) / (2 * reactance);
    }

    /** Phase constant in rad per metre of cable. */
    double radianPerMetre(double megahertz, double celsius) {
        return 2
                * Math.PI
                * megahertz
                * HERTZ_PER_MHZ
                / velocity()
                * (1 + lossiness(megahertz, celsius))
                * takeUp(); // (6)
    }

    /** Delay in ns per metre of cable; falls to its high-frequency value as 1/√f. */
    double nanosecondPerMetre(double megahertz, double celsius) {
        return radianPerMetre(megahertz, celsius) / (2 * Math.PI * megahertz) * 1e3;
    }
}
