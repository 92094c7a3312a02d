package dev.reelproof.demo.plant;

import java.util.Random;

/**
 * Source: the classical coupling integral of crosstalk and of structural return loss, from memory. Small random couplings along a
 * cable, summed with their phases.
 *
 * <p>Equation: X(f) = σ (f / 100 MHz) Σ g_k e^(−Γ z_k), z_k = k · 0.2 m up to the length.
 *
 * <p>Symbols: g_k standard normal, drawn once a cable; Γ = a + jb in Np/m and rad/m. With Γ = γ1 + γ2 the far couplings fade, the power grows as f² / a, as
 * a ∝ √f that is 15 dB a decade (near end, and reflections of a line that is uneven all along); with Γ = γ1 − γ2 all length adds, the power grows as f² L: 20 dB a
 * decade and 10 log L (far end). Range: any; sums stop where the fading is past 9 Np. Edge cases: a = 0 sums everything. Known error: the points are
 * evenly spaced, so the ripple repeats where b grows by 2π / 0.2 m, about 450 MHz apart; not noticeable in a demo.
 */
final class Scatter {
    private static final double STEP_M = 0.2;
    private static final double FADED_NEPER = 9;
    private static final double AT_MHZ = 100;

    private final double[] strength;

    Scatter(Random random, double lengthM) {
        strength = new double[(int) (lengthM / STEP_M)];
        for (int k = 0; k < strength.length; k++) {
            strength[k] = random.nextGaussian();
        }
    }

    /** The sum seen from the near end; from the far end when reversed. */
    Phasor sum(double megahertz, double neperPerMetre, double radianPerMetre, double sigma, boolean fromFarEnd) {
        double fade = StrictMath.exp(-neperPerMetre * STEP_M);
        double stepRe = fade * StrictMath.cos(radianPerMetre * STEP_M);
        double stepIm = -fade * StrictMath.sin(radianPerMetre * STEP_M);
        double re = 1;
        double im = 0;
        double sumRe = 0;
        double sumIm = 0;
        double scale = sigma * megahertz / AT_MHZ;
        int last = strength.length;
        if (neperPerMetre > 0) {
            last = (int) Math.min(last, FADED_NEPER / (neperPerMetre * STEP_M));
        }
        for (int k = 0; k < last; k++) {
            double g = strength[fromFarEnd ? strength.length - 1 - k : k];
            sumRe += g * re;
            sumIm += g * im;
            double nextRe = re * stepRe - im * stepIm;
            im = re * stepIm + im * stepRe;
            re = nextRe;
        }
        return new Phasor(-scale * sumIm, scale * sumRe); // times j: a coupling is a derivative in time
    }
}
