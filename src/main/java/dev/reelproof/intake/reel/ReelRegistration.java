package dev.reelproof.intake.reel;

import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.quantity.Length;
import org.jspecify.annotations.Nullable;

/**
 * A reel as it is registered before its test.
 *
 * @param reel its number, unique within the plant
 * @param plant the plant; absent when the document names none, and the caller's is meant
 * @param product the code of its product
 * @param length its length as registered
 * @param lengthSent the same as sent, in {@code lengthUnit}
 * @param lengthUnit the unit of the length as sent
 * @param lengthMarks the first and last length mark on its jacket, where stated
 * @param order the order it is made for, where stated
 * @param customer the customer, where stated
 */
public record ReelRegistration(
        String reel,
        @Nullable String plant,
        String product,
        Length length,
        double lengthSent,
        String lengthUnit,
        @Nullable LengthMarks lengthMarks,
        @Nullable String order,
        @Nullable String customer) {}
