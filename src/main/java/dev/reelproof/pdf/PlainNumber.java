package dev.reelproof.pdf;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as printed: no exponent, no trailing zeros, the minus sign of typography. */
final class PlainNumber {
    private static final char HYPHEN = '-';
    private static final char MINUS = '−';

    private PlainNumber() {}

    static String of(BigDecimal value) {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        return withMinusSign(plain.toPlainString());
    }

    static String of(double value) {
        return of(BigDecimal.valueOf(value));
    }

    /** The value rounded to at most so many decimal places; a half goes to the even neighbour. */
    static String rounded(double value, int places) {
        return of(BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN));
    }

    static String withMinusSign(String text) {
        return text.replace(HYPHEN, MINUS);
    }
}
