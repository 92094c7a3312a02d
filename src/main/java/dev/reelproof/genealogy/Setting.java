package dev.reelproof.genealogy;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A setting of a machine during a run: a word, such as a colour or the number of a die, or a number with or without its unit.
 *
 * @param text the word; null when it is a number
 * @param value the number, finite; null when it is a word
 * @param unit the number's unit as written; null when it has none
 */
public record Setting(@Nullable String text, @Nullable Double value, @Nullable String unit) {

    public Setting {
        if ((text == null) == (value == null) || (text != null && unit != null)) {
            throw new IllegalArgumentException("a setting is a word, or a number with or without a unit");
        }
        if (value != null && !Double.isFinite(value)) {
            throw new IllegalArgumentException("a setting's number must be finite, not " + value);
        }
    }

    /** A word. */
    public static Setting ofText(String text) {
        return new Setting(text, null, null);
    }

    /** A number, with or without a unit. */
    public static Setting ofNumber(double value, @Nullable String unit) {
        return new Setting(null, value, unit);
    }

    /**
     * The number of a setting that is no word.
     *
     * @throws NullPointerException when it is a word
     */
    public double number() {
        return Objects.requireNonNull(value, "a setting without text is a number");
    }

    /** As people write it: {@code blue}, {@code 14.2 mm}. */
    @Override
    public String toString() {
        return text != null ? text : PlainNumber.of(number()) + (unit == null ? "" : " " + unit);
    }
}
