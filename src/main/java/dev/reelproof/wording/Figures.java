package dev.reelproof.wording;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * Writes numbers as they are printed: the minus sign U+2212, a point before the decimals, no exponent, ties to the even digit, no
 * locale.
 */
public final class Figures {
    private static final int DIGITS_OF_FREQUENCY = 6;
    private static final int DIGITS_OF_UNCERTAINTY = 2;
    private static final int DIGITS_OF_STEP = 9;

    /** A double is good for 15 digits; what its last ones say is not rounded up. */
    private static final MathContext TRUSTED = new MathContext(12, RoundingMode.HALF_EVEN);

    private static final int PLACES_OF_TEMPERATURE = 1;
    private static final double LONG_METRES = 10;
    private static final int PLACES_OF_LONG = 2;
    private static final int PLACES_OF_SHORT = 3;
    private static final double KILOHERTZ_PER_MEGAHERTZ = 1000;

    private Figures() {}

    /** A number to so many decimal places. */
    public static String fixed(double value, int places) {
        return print(number(value).setScale(places, RoundingMode.HALF_EVEN));
    }

    /** Whether a number prints as zero with so many decimal places. */
    static boolean printsAsZero(double value, int places) {
        return number(value).setScale(places, RoundingMode.HALF_EVEN).signum() == 0;
    }

    /** A number to so many significant digits, trailing zeros left out. */
    public static String significant(double value, int digits) {
        return print(shortened(number(value).round(new MathContext(digits, RoundingMode.HALF_EVEN))));
    }

    /** A frequency, given in MHz, with its unit: kHz below 1 MHz. */
    public static String frequency(double megahertz) {
        return megahertz < 1
                ? significant(megahertz * KILOHERTZ_PER_MEGAHERTZ, DIGITS_OF_FREQUENCY) + " kHz"
                : frequencyInMegahertz(megahertz) + " MHz";
    }

    /** A frequency in MHz without its unit. */
    static String frequencyInMegahertz(double megahertz) {
        return significant(megahertz, DIGITS_OF_FREQUENCY);
    }

    /** A temperature with its unit, to one decimal, which is left out where it is zero. */
    public static String temperature(double value, String unit) {
        return print(shortened(number(value).setScale(PLACES_OF_TEMPERATURE, RoundingMode.HALF_EVEN))) + " " + unit;
    }

    /** A length with its unit: two decimals from 10 on, three below, trailing zeros left out. */
    public static String length(double value, String unit) {
        return length(value) + " " + unit;
    }

    /** A length without its unit, rounded as {@link #length(double, String)} does. */
    static String length(double value) {
        int places = Math.abs(value) >= LONG_METRES ? PLACES_OF_LONG : PLACES_OF_SHORT;
        return print(shortened(number(value).setScale(places, RoundingMode.HALF_EVEN)));
    }

    /** A length mark on a jacket without its unit: its decimals as they are, since it tells one reel from another. */
    static String mark(double value) {
        return print(shortened(number(value)));
    }

    /** A length to cut a reel to, in m: its decimals as they are, since rounding up would promise too much. */
    static String cutLength(double metres) {
        return print(shortened(number(metres))) + " m";
    }

    /**
     * An expanded uncertainty to two significant digits, rounded up: what is said of an uncertainty is never less than it is.
     *
     * <p>Source: JCGM 100:2008 (GUM), 7.2.6, two digits at most and rounding up where it is fitting (from memory).
     *
     * @param expanded 0 or more
     */
    public static String uncertainty(double expanded) {
        BigDecimal rounded =
                number(expanded).round(TRUSTED).round(new MathContext(DIGITS_OF_UNCERTAINTY, RoundingMode.UP));
        if (rounded.signum() == 0) {
            return "0";
        }
        int places = Math.max(0, DIGITS_OF_UNCERTAINTY - (rounded.precision() - rounded.scale()));
        return print(rounded.setScale(places, RoundingMode.UNNECESSARY));
    }

    /** The value of a step behind a figure with its unit, to nine digits. */
    public static String step(double value, @Nullable String unit) {
        String figure = significant(value, DIGITS_OF_STEP);
        return unit == null || unit.isEmpty() ? figure : figure + " " + unit;
    }

    private static BigDecimal number(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("a printed figure must be a number, not " + value);
        }
        return BigDecimal.valueOf(value);
    }

    private static BigDecimal shortened(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    private static String print(BigDecimal value) {
        return value.toPlainString().replace('-', '−');
    }
}
