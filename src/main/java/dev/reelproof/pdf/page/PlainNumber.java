package dev.reelproof.pdf.page;

import java.math.BigDecimal;

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

    public static String withMinusSign(String text) {
        return text.replace(HYPHEN, MINUS);
    }
}
