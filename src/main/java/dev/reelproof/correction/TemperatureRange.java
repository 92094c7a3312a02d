package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/**
 * The temperatures that a law is stated to hold at, ends included.
 *
 * @param lowest in °C
 * @param highest in °C
 */
record TemperatureRange(double lowest, double highest) {

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

    String words() {
        return PlainDecimal.of(lowest) + " to " + PlainDecimal.of(highest) + " °C";
    }
}
