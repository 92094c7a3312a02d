package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * Source: the insertion-loss temperature rule of ANSI/TIA-568 for unscreened cable, 0.4 %/°C to 40 °C and 0.6 %/°C above (from
 * memory; 0.4 %/°C read in the web page "LAN Wiring", Table 15.2).
 *
 * <p>Insertion loss of unscreened cable against temperature, in two steps, used backwards.
 *
 * <ul>
 *   <li>Equation: a0 = a · d(t0) / d(t); d(t) = 1 + to40 (t − 20) for t ≤ 40; d(t) = 1 + to40 · 20 + above40 (t − 40) for t > 40
 *   <li>Symbols: a measured and a0 referred insertion loss in dB, t cable and t0 reference temperature in °C, both coefficients
 *       per °C
 *   <li>Range: −20 to 60 °C, ends included (from memory)
 *   <li>Edge cases: the two steps join at 40 °C; at the reference temperature the value comes back unchanged; outside the range it
 *       is refused
 *   <li>Known error: "0.6 % from 40 to 60 °C" can also be read as one slope from 20 °C. Here each slope counts for its own degrees:
 *       at 50 °C the factor is 1 + 0.4 % · 20 + 0.6 % · 10 = 1.14, not 1.18
 * </ul>
 *
 * @param to40 increase per °C up to 40 °C, as a ratio of the loss at 20 °C; above 0 and at most {@value #GREATEST_COEFFICIENT}
 * @param above40 increase per °C above 40 °C, as a ratio of the loss at 20 °C; the same bounds
 */
public record UnscreenedLossTemperature(double to40, double above40) implements CorrectionLaw {
    /** The law's name in limit set files. */
    public static final String NAME = "unscreened-loss-temperature";
    /** Above every coefficient in use (0.015 is the highest, from memory), and keeps the factor positive at −20 °C. Per °C. */
    static final double GREATEST_COEFFICIENT = 0.02;

    private static final double COEFFICIENT_BASE_C = 20;
    private static final double STEP_C = 40;
    private static final TemperatureRange RANGE = new TemperatureRange(-20, 60);

    /** @throws IllegalArgumentException when a coefficient is not possible */
    public UnscreenedLossTemperature {
        requirePossible("to-40", to40);
        requirePossible("above-40", above40);
    }

    private static void requirePossible(String parameter, double coefficient) {
        if (!(coefficient > 0 && coefficient <= GREATEST_COEFFICIENT)) {
            throw new IllegalArgumentException("the coefficient " + parameter + " of " + NAME + " is "
                    + PlainDecimal.of(coefficient) + " per °C; it must be above 0 and at most "
                    + PlainDecimal.of(GREATEST_COEFFICIENT) + ", such as 0.004 for 0.4 % per °C");
        }
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public String citation() {
        return "ANSI/TIA-568, insertion loss of unscreened cable against temperature (from memory); "
                + "0.4 %/°C: web page \"LAN Wiring\", Table 15.2 (read)";
    }

    @Override
    public String formula() {
        String low = PlainDecimal.of(to40);
        String atStep = PlainDecimal.of(1 + to40 * (STEP_C - COEFFICIENT_BASE_C));
        return "a0 = a · d(t0) / d(t); d(t) = 1 + " + low + " (t − 20) up to 40 °C, " + atStep + " + "
                + PlainDecimal.of(above40) + " (t − 40) above, t in °C";
    }

    @Override
    public void requireCovers(Temperature temperature) {
        RANGE.require(NAME, "cable temperature", temperature);
    }

    @Override
    public Line at(MeasurementConditions conditions) {
        requireCovers(conditions.temperature());
        RANGE.require(NAME, "reference temperature", conditions.referenceTemperature());
        return Line.scaling(factor(conditions.referenceTemperature()) / factor(conditions.temperature()));
    }

    private double factor(Temperature temperature) {
        double celsius = temperature.celsius();
        double toStep = to40 * (Math.min(celsius, STEP_C) - COEFFICIENT_BASE_C);
        double aboveStep = above40 * Math.max(celsius - STEP_C, 0);
        return 1 + toStep + aboveStep;
    }

    /**
     * ∂a0/∂a = d(t0)/d(t), ∂a0/∂t = −a d(t0) d′(t)/d(t)² and, both coefficients changed by the same share, ∂a0/∂ln α = a0 [1/d(t) −
     * 1/d(t0)]. Exactly on the step both slopes meet; the steeper counts, so that no uncertainty is hidden by the kink.
     */
    @Override
    public Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double corrected = correct(value, conditions);
        double factor = factor(conditions.temperature());
        double atReference = factor(conditions.referenceTemperature());
        double celsius = conditions.temperature().celsius();
        double slope = celsius == STEP_C ? Math.max(to40, above40) : celsius < STEP_C ? to40 : above40;
        return new Sensitivity(
                atReference / factor, -corrected * slope / factor, 0, 0, corrected * (1 / factor - 1 / atReference));
    }
}
