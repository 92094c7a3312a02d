package dev.reelproof.demo.plant;

import java.util.Random;

/**
 * Source: first-order reflection of a slightly uneven line, from memory. What returns from one pair of one reel.
 *
 * <p>Equation: S11 = ρ(f) (1 − e^(−2γL)) + Σ r_i e^(−2γ z_i) + (T/2L)(1 − e^(−2γL))/(2γ) + (π q / 2P)(1 − e^(−(2γ' )L))/(2γ') + scatter, where
 * ρ = (Z − 100)/(Z + 100) + (1 − j) R/(4 ω L0), 2γ' = 2α + 1/D + j(2β − 2π/P).
 *
 * <p>Symbols: first term the mismatch to 100 ohm at both ends, with the rise of Z at low frequency; r_i a few local dents of the cable; T the slow
 * change of Z along the reel, relative; q relative swing of Z with period P in metres (a capstan or a caterpillar that pulls unevenly) that keeps step over D metres: it
 * peaks where half a wavelength is P; scatter is {@link Scatter}. Range: reflections below −10 dB, so that they do not reflect again. Edge cases: none.
 * Known error: second reflections are left out.
 */
final class Echoes {
    private static final double TESTER_OHM = 100;
    private static final int DENTS = 6;
    private static final double DENT_SIZE = 0.005;
    private static final double TAPER_SIZE = 0.006;
    private static final double IN_STEP_M = 12;

    private final TwistedPair pair;
    private final double lengthM;
    private final double sigma;
    private final double swing;
    private final double periodM;
    private final double[] dentAt = new double[DENTS];
    private final double[] dentSize = new double[DENTS];
    private final double taper;
    private final Scatter scatter;

    /**
     * The echoes of one pair.
     *
     * @param sigma strength of the scatter
     * @param swing relative swing of the impedance with the period
     * @param periodM the period in metres
     */
    Echoes(Random random, TwistedPair pair, double lengthM, double sigma, double swing, double periodM) {
        this.pair = pair;
        this.lengthM = lengthM;
        this.sigma = sigma;
        this.swing = swing;
        this.periodM = periodM;
        for (int i = 0; i < DENTS; i++) {
            dentAt[i] = random.nextDouble() * lengthM;
            dentSize[i] = random.nextGaussian() * DENT_SIZE;
        }
        taper = random.nextGaussian() * TAPER_SIZE;
        scatter = new Scatter(random, lengthM);
    }

    double returnLossDecibel(double megahertz, double celsius, boolean fromFarEnd) {
        double neper = pair.neperPerMetre(megahertz, celsius);
        double radian = pair.radianPerMetre(megahertz, celsius);
        Phasor whole = new Phasor(1, 0).minus(Phasor.decaying(2 * neper * lengthM, 2 * radian * lengthM));
        Phasor twice = new Phasor(2 * neper, 2 * radian);
        double lossy = pair.lossiness(megahertz, celsius) / 2;
        double mismatch = (pair.impedanceOhm() - TESTER_OHM) / (pair.impedanceOhm() + TESTER_OHM);
        Phasor sum = new Phasor(mismatch + lossy, -lossy).times(whole);
        for (int i = 0; i < DENTS; i++) {
            double at = fromFarEnd ? lengthM - dentAt[i] : dentAt[i];
            sum = sum.plus(Phasor.decaying(2 * neper * at, 2 * radian * at).times(dentSize[i]));
        }
        double slope = (fromFarEnd ? -taper : taper) / (2 * lengthM);
        sum = sum.plus(whole.over(twice).times(slope));
        Phasor beat = new Phasor(2 * neper + 1 / IN_STEP_M, 2 * radian - 2 * Math.PI / periodM);
        Phasor beats = new Phasor(1, 0).minus(Phasor.decaying(beat.re() * lengthM, beat.im() * lengthM));
        sum = sum.plus(beats.over(beat).times(Math.PI * swing / (2 * periodM)));
        return sum.plus(scatter.sum(megahertz, 2 * neper, 2 * radian, sigma, fromFarEnd))
                .decibel();
    }
}
