package dev.reelproof.certificate;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The number of a certificate: plant, year, serial number within both, such as {@code NORTH-2026-000123}.
 *
 * @param plant the plant, 1 to 12 capital letters or digits, a letter first
 * @param year the year of issue, 2000 to 9999
 * @param serial 1 to 999999
 */
public record CertificateNumber(String plant, int year, int serial) {
    private static final Pattern PLANT = Pattern.compile("[A-Z][A-Z0-9]{0,11}");
    private static final Pattern NUMBER = Pattern.compile("(?<plant>[^-]+)-(?<year>[0-9]{4})-(?<serial>[0-9]{6})");
    private static final int FIRST_YEAR = 2000;
    private static final int LAST_YEAR = 9999;
    private static final int LAST_SERIAL = 999_999;

    public CertificateNumber {
        if (plant == null || !PLANT.matcher(plant).matches()) {
            throw new IllegalArgumentException("the plant of a certificate number is 1 to 12 capital letters or digits,"
                    + " a letter first, not '" + plant + "'");
        }
        if (!(year >= FIRST_YEAR && year <= LAST_YEAR)) {
            throw new IllegalArgumentException("the year of a certificate number is 2000 to 9999, not " + year);
        }
        if (!(serial >= 1 && serial <= LAST_SERIAL)) {
            throw new IllegalArgumentException("the serial of a certificate number is 1 to 999999, not " + serial);
        }
    }

    /** The number for a plant as the configuration spells it, such as {@code north}. */
    public static CertificateNumber of(String plant, int year, int serial) {
        return new CertificateNumber(plant.toUpperCase(Locale.ROOT), year, serial);
    }

    /** The number before this one of the same plant and year; empty for the first. */
    public Optional<CertificateNumber> previous() {
        return serial == 1 ? Optional.empty() : Optional.of(new CertificateNumber(plant, year, serial - 1));
    }

    /** The number that a text is; empty when it is none, and so was never issued. */
    public static Optional<CertificateNumber> find(String text) {
        try {
            return Optional.of(parse(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /**
     * Reads a number as printed.
     *
     * @throws IllegalArgumentException when it is not one
     */
    public static CertificateNumber parse(String text) {
        Matcher matcher = NUMBER.matcher(text);
        if (!matcher.matches()) {
            throw new IllegalArgumentException(
                    "'" + text + "' is not a certificate number; one reads like NORTH-2026-000123");
        }
        return new CertificateNumber(
                matcher.group("plant"),
                Integer.parseInt(matcher.group("year")),
                Integer.parseInt(matcher.group("serial")));
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s-%04d-%06d", plant, year, serial);
    }
}
