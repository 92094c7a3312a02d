package dev.reelproof.pdf.page;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as printed: no exponent, no trailing zeros, the minus sign of typography. */
public final class PlainNumber {
    private static final char HYPHEN = '-';
    private static final char MINUS = '−';

    private PlainNumber() {}

    public static String of(BigDecimal value) {
        BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
        return withMinusSign(plain.toPlainString());
    }

    public static String of(double value) {
        return of(BigDecimal.valueOf(value));
    }

    /** The value rounded to at most so many decimal places; a half goes to the even neighbour. */
    public static String rounded(double value, int places) {
        return of(BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN));
    }

    public static String withMinusSign(String text) {
        return text.replace(HYPHEN, MINUS);
    }
}
