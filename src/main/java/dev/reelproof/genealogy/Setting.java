package dev.reelproof.genealogy;

/**
 * A setting of a machine during a run: a word, such as a colour or the number of a die, or a number with or without its unit.
 *
 * @param text the word; null when it is a number
 * @param value the number, finite; null when it is a word
 * @param unit the number's unit as written; null when it has none
 */
public record Setting(String text, Double value, String unit) {

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

    /** A number; the unit may be null. */
    public static Setting ofNumber(double value, String unit) {
        return new Setting(null, value, unit);
    }

    /** As people write it: {@code blue}, {@code 14.2 mm}. */
    @Override
    public String toString() {
        return text != null ? text : PlainNumber.of(value) + (unit == null ? "" : " " + unit);
    }
}
