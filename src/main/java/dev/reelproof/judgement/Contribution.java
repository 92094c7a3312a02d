package dev.reelproof.judgement;

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

    Step step(String unit) {
        return new Step(
                "uncertainty",
                quantity.get() + "; standard uncertainty " + standard + " " + quantityUnit + ", derivative "
                        + derivative,
                amount,
                unit,
                source);
    }
}
