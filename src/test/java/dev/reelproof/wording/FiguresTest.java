package dev.reelproof.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FiguresTest {

    @ParameterizedTest
    @CsvSource({
        "12.345, 2, 12.34", // a tie goes to the even digit
        "12.355, 2, 12.36",
        "-4.45, 2, −4.45", // the minus sign, not the hyphen
        "-0.001, 2, 0.00", // no sign on a zero
        "-0.0, 1, 0.0",
        "1e7, 1, 10000000.0", // no exponent
        "0.5, 0, 0",
        "1.5, 0, 2",
    })
    void aFigureWithItsPlaces(double value, int places, String printed) {
        assertEquals(printed, Figures.fixed(value, places));
    }

    @ParameterizedTest
    @CsvSource({
        "0.026, 0.026",
        "0.0261, 0.027", // rounded up, never down
        "0.35, 0.35",
        "0.3, 0.30", // two digits, the second one a zero
        "0.30000000000000004, 0.30", // the last digits of a double are not an uncertainty
        "0.996, 1.0",
        "9.96, 10",
        "12.1, 13",
        "123, 130",
        "1.0, 1.0",
        "0.00000123, 0.0000013",
        "0, 0",
    })
    void anUncertaintyIsNeverPrintedLessThanItIs(double expanded, String printed) {
        assertEquals(printed, Figures.uncertainty(expanded));
    }

    @ParameterizedTest
    @CsvSource({"22.77777777777778, 22.8 °C", "20, 20 °C", "31.04, 31 °C", "-5.25, −5.2 °C", "-0.04, 0 °C"})
    void aTemperatureHasOneDecimal(double celsius, String printed) {
        assertEquals(printed, Figures.temperature(celsius, "°C"));
    }

    @ParameterizedTest
    @CsvSource({
        "305, m, 305 m",
        "304.8, m, 304.8 m",
        "304.79999999999995, m, 304.8 m",
        "1000, ft, 1000 ft",
        "0.25, km, 0.25 km"
    })
    void aLength(double value, String unit, String printed) {
        assertEquals(printed, Figures.length(value, unit));
    }

    @ParameterizedTest
    @CsvSource({
        "378, 378 MHz",
        "100.25, 100.25 MHz", // a grid of quarter megahertz is named exactly
        "1000.25, 1000.25 MHz",
        "377.9614573, 377.961 MHz",
        "0.772, 772 kHz",
        "0.001, 1 kHz",
        "1, 1 MHz",
    })
    void aFrequency(double megahertz, String printed) {
        assertEquals(printed, Figures.frequency(megahertz));
    }

    @ParameterizedTest
    @CsvSource({
        "0.9999, above 99.9 %",
        "1.0, above 99.9 %",
        "0.999, 99.9 %",
        "0.5, 50.0 %",
        "0.001, 0.1 %",
        "0.0009, below 0.1 %",
        "0.0, below 0.1 %",
    })
    void aProbabilityIsNeverCertain(double probability, String printed) {
        assertEquals(printed, Wording.english().probability(probability));
    }

    @ParameterizedTest
    @CsvSource({"95.41, ohm/km, 95.41 ohm/km", "0.1234567891234, dB, 0.123456789 dB", "-3, dB, −3 dB", "0.98, '', 0.98"
    })
    void aStepBehindAFigure(double value, String unit, String printed) {
        assertEquals(printed, Figures.step(value, unit));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void whatIsNoNumberIsNotPrinted(double value) {
        assertThrows(IllegalArgumentException.class, () -> Figures.fixed(value, 2));
        assertThrows(IllegalArgumentException.class, () -> Figures.significant(value, 4));
        assertThrows(IllegalArgumentException.class, () -> Figures.uncertainty(value));
        assertThrows(IllegalArgumentException.class, () -> Figures.temperature(value, "°C"));
    }
}
