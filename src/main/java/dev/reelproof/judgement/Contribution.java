package dev.reelproof.judgement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.function.Supplier;

/**
 * One quantity's share in the uncertainty of a corrected value.
 *
 * @param quantity what it is, with the value at which it was read and the parts of its uncertainty
 * @param standard standard uncertainty of the quantity, in {@code quantityUnit}
 * @param quantityUnit its unit
 * @param derivative of the corrected value by the quantity
 * @param amount the share: |derivative| · standard, in the unit of the corrected value
 * @param source where the uncertainty of the quantity comes from
 */
record Contribution(
        Supplier<String> quantity,
        double standard,
        String quantityUnit,
        double derivative,
        double amount,
        String source) {

    /** Digits of a factor in a sentence; the share itself keeps them all. */
    private static final MathContext DIGITS_TOLD = new MathContext(6);

    static Contribution of(
            Supplier<String> quantity, double standard, String quantityUnit, double derivative, String source) {
        return new Contribution(quantity, standard, quantityUnit, derivative, Math.abs(derivative) * standard, source);
    }

    Step step(String unit) {
        return new Step(
                "uncertainty",
                quantity.get() + "; standard uncertainty " + told(standard) + " " + quantityUnit + ", derivative "
                        + told(derivative),
                amount,
                unit,
                source);
    }

    private static String told(double value) {
        return BigDecimal.valueOf(value).round(DIGITS_TOLD).stripTrailingZeros().toString();
    }
}
