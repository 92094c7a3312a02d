package dev.reelproof.limit;

import java.math.BigDecimal;

/** Writes coefficients as a standard would print them. */
public final class Formulas {
    private Formulas() {}

    public static String number(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    static void append(StringBuilder formula, double coefficient, String rest) {
        if (coefficient == 0) {
            return;
        }
        if (!formula.isEmpty()) {
            formula.append(coefficient < 0 ? " − " : " + ");
        } else if (coefficient < 0) {
            formula.append("−");
        }
        formula.append(number(Math.abs(coefficient))).append(rest);
    }
}
