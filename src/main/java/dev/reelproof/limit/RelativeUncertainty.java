package dev.reelproof.limit;

/**
 * Source: JCGM 100:2008 (GUM), 4.3.3 (u = U/k), from memory.
 *
 * <p>What a figure that the laws take as known is uncertain by, such as their temperature coefficients.
 *
 * <ul>
 *   <li>Equation: u = p / k
 *   <li>Symbols: u standard uncertainty and p expanded uncertainty, both as a ratio of the figure; k coverage factor of p
 *   <li>Range: p of 0 or more and finite, k above 0 and finite
 *   <li>Edge cases: p of 0 says that the figure is exact
 *   <li>Known error: all figures that it stands for are taken to err by the same share and in the same direction
 * </ul>
 *
 * @param proportional p
 * @param coverageFactor k
 * @param source where the figure comes from
 */
public record RelativeUncertainty(double proportional, double coverageFactor, Source source) {
    private static final double PERCENT = 100;

    /** @throws IllegalArgumentException when a figure is not possible */
    public RelativeUncertainty {
        if (!(proportional >= 0 && Double.isFinite(proportional))) {
            throw new IllegalArgumentException(
                    "a relative uncertainty must be 0 or more and finite, not " + proportional);
        }
        InstrumentUncertainty.requireCoverageFactor(coverageFactor);
    }

    /** The standard uncertainty, as a ratio of the figure. */
    public double standard() {
        return proportional / coverageFactor;
    }

    /** The figure for people. */
    public String words() {
        return Formulas.number(proportional * PERCENT) + " %, k = " + Formulas.number(coverageFactor);
    }
}
