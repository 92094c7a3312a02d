package dev.reelproof.genealogy;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as people write them in a sentence: nine digits, no exponent, no locale. */
public final class PlainNumber {
    private static final MathContext SHOWN = new MathContext(9);

    private PlainNumber() {}

    public static String of(double value) {
        return new BigDecimal(value).round(SHOWN).stripTrailingZeros().toPlainString();
    }
}
