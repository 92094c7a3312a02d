package dev.reelproof.correction;

/**
 * Source: JCGM 100:2008 (GUM), 5.1.3, sensitivity coefficients ∂f/∂x of a measurement model (from memory).
 *
 * <p>How a corrected value c answers to small changes of what it was computed from.
 *
 * <ul>
 *   <li>Equation: value = ∂c/∂x, perDegree = ∂c/∂t, perMetre = ∂c/∂L, perLossPerMetre = ∂c/∂a, perCoefficient = ∂c/∂ln α
 *   <li>Symbols: x value before correction and c after it in the property's canonical unit, t cable temperature in °C, L the
 *       length that the value belongs to in m, a measured insertion loss in dB/m, α temperature coefficient of the law per °C; where it
 *       has several, all change by the same share
 *   <li>Range: where the law itself holds
 *   <li>Edge cases: a law that does not use a quantity has the derivative 0 by it; at the reference temperature perCoefficient is 0
 *   <li>Known error: none; the caller decides whether a first-order expansion is enough
 * </ul>
 *
 * @param value ∂c/∂x, a ratio
 * @param perDegree ∂c/∂t, canonical unit per °C
 * @param perMetre ∂c/∂L, canonical unit per metre; the loss per metre held fixed
 * @param perLossPerMetre ∂c/∂a, canonical unit per dB/m
 * @param perCoefficient ∂c/∂ln α, canonical unit for a relative change of 1
 */
public record Sensitivity(
        double value, double perDegree, double perMetre, double perLossPerMetre, double perCoefficient) {
    /** No correction: the value comes back as it was. */
    public static final Sensitivity UNCHANGED = new Sensitivity(1, 0, 0, 0, 0);

    public Sensitivity {
        if (!(Double.isFinite(value)
                && Double.isFinite(perDegree)
                && Double.isFinite(perMetre)
                && Double.isFinite(perLossPerMetre)
                && Double.isFinite(perCoefficient))) {
            throw new IllegalArgumentException("a sensitivity must be finite, not " + value + ", " + perDegree
                    + " per °C, " + perMetre + " per m, " + perLossPerMetre + " per dB/m, " + perCoefficient
                    + " for a relative change of the coefficient");
        }
    }

    /** The sensitivity of this law followed by the next, by the chain rule. */
    public Sensitivity then(Sensitivity next) {
        return new Sensitivity(
                next.value * value,
                next.value * perDegree + next.perDegree,
                next.value * perMetre + next.perMetre,
                next.value * perLossPerMetre + next.perLossPerMetre,
                next.value * perCoefficient + next.perCoefficient);
    }
}
