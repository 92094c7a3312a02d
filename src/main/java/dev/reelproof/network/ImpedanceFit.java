package dev.reelproof.network;

import java.util.Locale;
import java.util.Optional;

/**
 * Source: ASTM D4566, characteristic impedance, method 3, least-squares function fit, and IEC TR 61156-1-2, function fitting of
 * magnitude and angle: that both have the method was read in their contents and scope, the equation is from memory.
 *
 * <ul>
 *   <li>Equation: |Z| = K0 + K1/√f + K2/f + K3/(f√f) (1), arg Z = L0 + L1/√f + L2/f + L3/(f√f) (2), K and L such that the sum of
 *       the squares of the differences over all frequencies is least (3)
 *   <li>Symbols: Z impedance in ohm, f frequency in MHz, K in ohm, ohm √MHz, ohm MHz and ohm MHz√MHz, L alike in rad
 *   <li>Range: 20 frequencies at least, the last ten times the first or more: fewer would follow the irregularities that the fit is to
 *       leave out (common practice, no source). Each frequency counts once, however the grid is spaced
 *   <li>Edge cases: an impedance that is not finite, or whose resistance is not above 0, is refused
 *   <li>Known error: (3) is solved in t, 1/√f brought to −1…1, by its normal equations, whose condition is some thousand: 1e-12 of
 *       the largest term. A uniform line follows (1) and (2) up to the term in 1/f²
 * </ul>
 */
final class ImpedanceFit {
    static final String CITATION =
            "ASTM D4566, characteristic impedance, method 3, least-squares function fit (equation from" + " memory)";
    static final int LEAST_POINTS = 20;
    static final double LEAST_SPAN = 10;
    private static final int TERMS = 4;

    private final double middle;
    private final double half;
    /** Of the powers of t: real parts for the magnitude, imaginary ones for the angle. */
    private final double[] magnitude;

    private final double[] angle;

    private ImpedanceFit(double middle, double half, double[] magnitude, double[] angle) {
        this.middle = middle;
        this.half = half;
        this.magnitude = magnitude;
        this.angle = angle;
    }

    /** Why these frequencies are too few for a fit; empty when they are not. */
    static Optional<String> whyNot(double[] megahertz) {
        if (megahertz.length >= LEAST_POINTS && megahertz[megahertz.length - 1] >= LEAST_SPAN * megahertz[0]) {
            return Optional.empty();
        }
        return Optional.of("a fit takes " + LEAST_POINTS + " frequencies or more, the last at least " + LEAST_SPAN
                + " times the first");
    }

    /**
     * The fit of a measured impedance.
     *
     * @param megahertz frequencies in MHz, ascending
     * @param re resistance at each in ohm
     * @param im reactance at each in ohm
     * @throws IllegalArgumentException when there are too few, or an impedance is none of a cable
     */
    static ImpedanceFit of(double[] megahertz, double[] re, double[] im) {
        Optional<String> tooFew = whyNot(megahertz);
        if (tooFew.isPresent()) {
            throw new IllegalArgumentException(tooFew.get());
        }
        double most = 1 / Math.sqrt(megahertz[0]);
        double least = 1 / Math.sqrt(megahertz[megahertz.length - 1]);
        double middle = (most + least) / 2;
        double half = (most - least) / 2;
        ComplexMatrix squares = new ComplexMatrix(TERMS);
        ComplexMatrix sums = new ComplexMatrix(TERMS);
        for (int i = 0; i < megahertz.length; i++) {
            if (!(re[i] > 0 && Double.isFinite(re[i]) && Double.isFinite(im[i]))) {
                throw new IllegalArgumentException("at " + megahertz[i] + " MHz it would be " + re[i] + " + j" + im[i]
                        + " ohm, which is the impedance of no cable");
            }
            double[] powers = powers((1 / Math.sqrt(megahertz[i]) - middle) / half);
            double size = StrictMath.hypot(re[i], im[i]);
            double argument = StrictMath.atan2(im[i], re[i]);
            for (int n = 0; n < TERMS; n++) {
                sums.set(0, n, sums.re(0, n) + size * powers[n], sums.im(0, n) + argument * powers[n]);
                for (int m = 0; m < TERMS; m++) {
                    squares.set(m, n, squares.re(m, n) + powers[m] * powers[n], 0);
                }
            }
        }
        ComplexMatrix solved = sums.over(squares); // (3)
        double[] magnitude = new double[TERMS];
        double[] angle = new double[TERMS];
        for (int n = 0; n < TERMS; n++) {
            magnitude[n] = solved.re(0, n);
            angle[n] = solved.im(0, n);
        }
        return new ImpedanceFit(middle, half, magnitude, angle);
    }

    private static double[] powers(double t) {
        return new double[] {1, t, t * t, t * t * t};
    }

    /** |Z| at a frequency in MHz, ohm. */
    double magnitude(double megahertz) {
        return at(megahertz, magnitude); // (1)
    }

    /** arg Z at a frequency in MHz, rad. */
    double angle(double megahertz) {
        return at(megahertz, angle); // (2)
    }

    private double at(double megahertz, double[] coefficients) {
        double t = (1 / Math.sqrt(megahertz) - middle) / half;
        return ((coefficients[3] * t + coefficients[2]) * t + coefficients[1]) * t + coefficients[0];
    }

    /** K0 to K3 of (1). */
    double[] coefficients() {
        // the polynomial in t = (x − middle)/half, by the powers of x = 1/√f
        double[] k = new double[TERMS];
        double[] power = {1, 0, 0, 0};
        for (int n = 0; n < TERMS; n++) {
            double[] next = new double[TERMS];
            for (int m = 0; m < TERMS; m++) {
                k[m] += magnitude[n] * power[m];
                next[m] = -middle / half * power[m] + (m > 0 ? power[m - 1] / half : 0);
            }
            power = next;
        }
        return k;
    }

    /** The fitted equation with its figures, for people. */
    String words() {
        double[] k = coefficients();
        return String.format(
                Locale.ROOT,
                "|Z| = K0 + K1/√f + K2/f + K3/(f√f), f in MHz, K0 = %.3f ohm, K1 = %.3f, K2 = %.3f, K3 = %.3f",
                k[0],
                k[1],
                k[2],
                k[3]);
    }

    /**
     * The structural return loss of an impedance against this fit.
     *
     * @param megahertz the frequency in MHz
     * @param re resistance in ohm
     * @param im reactance in ohm
     * @return dB
     */
    double structuralReturnLoss(double megahertz, double re, double im) {
        return StructuralReturnLoss.of(re, im, magnitude(megahertz), angle(megahertz));
    }
}
