package dev.reelproof.quantity;

/**
 * A temperature, held in degrees Celsius.
 *
 * @param celsius the temperature in °C; finite and not below absolute zero
 */
public record Temperature(double celsius) {
    private static final double ABSOLUTE_ZERO_C = -273.15;
    private static final double FAHRENHEIT_AT_ZERO_C = 32;
    private static final double CELSIUS_PER_FAHRENHEIT = 5.0 / 9.0;
    private static final double THOUSANDTHS = 1000;

    public Temperature {
        if (!(celsius >= ABSOLUTE_ZERO_C && Double.isFinite(celsius))) {
            throw new IllegalArgumentException(
                    "temperature must be finite and not below absolute zero, not " + celsius + " °C");
        }
    }

    public static Temperature ofCelsius(double celsius) {
        return new Temperature(celsius);
    }

    /**
     * A temperature as written: a number and °C or °F (also C, degC, F, degF).
     *
     * @throws IllegalArgumentException when the unit is not one of temperature
     */
    public static Temperature of(double value, String unit) {
        return switch (unit.trim()) {
            case "°C", "C", "degC", "℃" -> new Temperature(value);
            case "°F", "F", "degF", "℉" -> new Temperature((value - FAHRENHEIT_AT_ZERO_C) * CELSIUS_PER_FAHRENHEIT);
            default -> throw new IllegalArgumentException("unknown temperature unit '" + unit + "'; use °C or °F");
        };
    }

    /** The temperature in °C to a thousandth, for a sentence: 73 °F reads "22.778 °C". */
    public String words() {
        return Math.rint(celsius * THOUSANDTHS) / THOUSANDTHS + " °C";
    }
}
