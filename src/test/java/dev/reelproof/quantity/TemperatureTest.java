package dev.reelproof.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A temperature reads as a person would say it, however it was sent. */
class TemperatureTest {

    @ParameterizedTest
    @CsvSource({
        "73, °F, 22.778 °C",
        "70.2, °F, 21.222 °C",
        "68, °F, 20.0 °C",
        "31.0, °C, 31.0 °C",
        "-40, °F, -40.0 °C",
    })
    void readsToAThousandthOfADegree(double value, String unit, String words) {
        assertEquals(words, Temperature.of(value, unit).words());
    }
}
