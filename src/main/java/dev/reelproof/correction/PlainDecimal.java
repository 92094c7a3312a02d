package dev.reelproof.correction;

import java.math.BigDecimal;

/** A number as people write it: all its digits, no exponent, no locale. */
final class PlainDecimal {
    private PlainDecimal() {}

    static String of(double value) {
        return Double.isFinite(value)
                ? BigDecimal.valueOf(value).stripTrailingZeros().toPlainString()
                : Double.toString(value);
    }
}
