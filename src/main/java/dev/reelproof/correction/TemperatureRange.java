package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * The temperatures that a law is stated to hold at, ends included.
 *
 * @param lowest in °C
 * @param highest in °C
 */
record TemperatureRange(double lowest, double highest) {
    /** In °C. No reel is tested colder or warmer, so that °F given in place of °C is refused. */
    private static final double LOWEST_STATED = -60;

    private static final double HIGHEST_STATED = 120;

    /**
     * Refuses a temperature outside the range.
     *
     * @param law the law's name
     * @param what which temperature it is, such as "cable temperature"
     * @throws OutsideLawException naming the temperature and the range
     */
    void require(String law, String what, Temperature temperature) {
        double celsius = temperature.celsius();
        if (!(celsius >= lowest && celsius <= highest)) {
            throw new OutsideLawException("the " + what + " of " + PlainDecimal.of(celsius)
                    + " °C lies outside what the law " + law + " covers, " + words()
                    + "; measure again with the cable inside that range");
        }
    }

    /**
     * Refuses a range that a limit set states and that cannot be one.
     *
     * @param law the law's name
     * @param lowest in °C
     * @param highest in °C
     * @throws IllegalArgumentException when it is not one
     */
    static void requireStated(String law, double lowest, double highest) {
        if (!(lowest < highest && lowest >= LOWEST_STATED && highest <= HIGHEST_STATED)) {
            throw new IllegalArgumentException("the law " + law + " is stated from " + PlainDecimal.of(lowest) + " to "
                    + PlainDecimal.of(highest) + " °C; it must run upwards within "
                    + new TemperatureRange(LOWEST_STATED, HIGHEST_STATED).words());
        }
    }

    String words() {
        return PlainDecimal.of(lowest) + " to " + PlainDecimal.of(highest) + " °C";
    }
}
