package dev.reelproof.quantity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A unit as a bay or a limit set writes it: {@code ohm}, {@code nF/kft}, {@code dB/100 m}, {@code megohm·km}.
 *
 * <p>A unit that carries a length says that the value is referred to that length; without one the value is of the whole reel.
 * Both {@code ohm/km} and {@code megohm·km} refer to one kilometre: what differs is how the quantity grows with length, which
 * is the correction law's business, not the unit's.
 *
 * @param text the unit as written
 * @param numerator the part without the length
 * @param kind what the numerator measures
 * @param referredTo the length that the value is referred to; empty for the whole reel
 */
public record ReadingUnit(String text, String numerator, Kind kind, Optional<Length> referredTo) {
    private static final Pattern PER_LENGTH = Pattern.compile(
            "(?<numerator>[^/·*]+?)\\s*(?<joint>/|·|\\*)\\s*(?<count>\\d+(?:\\.\\d+)?)?\\s*(?<length>m|km|ft|kft|mile|mi)");
    private static final Pattern HYPHENED =
            Pattern.compile("(?<numerator>megohm|Mohm|gigohm|Gohm)-(?<length>m|km|ft|kft|mile|mi)");

    /**
     * Reads a unit.
     *
     * @throws IllegalArgumentException when the unit is not known
     */
    public static ReadingUnit parse(String text) {
        String trimmed = text.trim();
        Matcher perLength = PER_LENGTH.matcher(trimmed);
        Matcher hyphened = HYPHENED.matcher(trimmed);
        if (hyphened.matches()) {
            return of(trimmed, hyphened.group("numerator"), Length.of(1, hyphened.group("length")));
        }
        if (perLength.matches()) {
            String count = perLength.group("count");
            double lengths = count == null ? 1 : Double.parseDouble(count);
            return of(trimmed, perLength.group("numerator"), Length.of(lengths, perLength.group("length")));
        }
        return of(trimmed, trimmed, null);
    }

    private static ReadingUnit of(String text, String numerator, @Nullable Length referredTo) {
        Units.Symbol symbol = Units.symbol(numerator);
        return new ReadingUnit(text, numerator.trim(), symbol.kind(), Optional.ofNullable(referredTo));
    }

    /**
     * The factor that turns a value in this unit's numerator into one in the other's; lengths are not touched.
     *
     * @throws IllegalArgumentException when the two measure different kinds of quantity
     */
    public double numeratorFactorTo(String otherNumerator) {
        Units.Symbol from = Units.symbol(numerator);
        Units.Symbol to = Units.symbol(otherNumerator);
        if (from.kind() != to.kind()) {
            throw new IllegalArgumentException("unit '" + text + "' is a unit of "
                    + from.kind().words() + "; expected one of " + to.kind().words() + ", such as " + otherNumerator);
        }
        return from.toBase() / to.toBase();
    }

    @Override
    public String toString() {
        return text;
    }
}
