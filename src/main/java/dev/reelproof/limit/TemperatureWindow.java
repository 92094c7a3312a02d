package dev.reelproof.limit;

import dev.reelproof.quantity.Temperature;

/**
 * The temperatures at which a requirement may be judged when no law corrects for temperature.
 *
 * @param at the middle, °C
 * @param within half the width, K
 */
public record TemperatureWindow(Temperature at, double within) {

    public TemperatureWindow {
        if (!(within >= 0 && Double.isFinite(within))) {
            throw new IllegalArgumentException(
                    "half the width of a temperature window must not be negative: " + within);
        }
    }

    public boolean holds(Temperature temperature) {
        return Math.abs(temperature.celsius() - at.celsius()) <= within;
    }
}
