package dev.reelproof.genealogy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AmountTest {
    // Foot 0.3048 m, mile 5280 ft, pound 0.45359237 kg: exact by the international agreement of 1959, from memory.
    // The tolerance is a few roundings of a double.
    @ParameterizedTest
    @CsvSource({
        "7, m, LENGTH, 7",
        "7, km, LENGTH, 7000",
        "1000, ft, LENGTH, 304.8",
        "2.5, kft, LENGTH, 762",
        "2, mile, LENGTH, 3218.688",
        "7, kg, MASS, 7",
        "250, g, MASS, 0.25",
        "1.5, t, MASS, 1500",
        "5000, lb, MASS, 2267.96185"
    })
    void isHeldAsSentAndCountedInMetresOrKilograms(double value, String unit, Kind kind, double base) {
        Amount amount = new Amount(value, unit);
        assertEquals(value, amount.value());
        assertEquals(unit, amount.unit());
        assertEquals(kind, amount.kind());
        assertEquals(base, amount.base(), base * 1e-15);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -0.0, -1, Double.NaN, Double.POSITIVE_INFINITY, 1e307})
    void refusesWhatIsNotPositiveAndFinite(double value) {
        assertThrows(IllegalArgumentException.class, () -> new Amount(value, "mile"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "M", "mm", "ohm", "count", "furlong", "m "})
    void refusesOtherUnits(String unit) {
        String message = assertThrows(IllegalArgumentException.class, () -> new Amount(1, unit))
                .getMessage();
        assertTrue(message.contains("m, km, ft, kft, mile") && message.contains("kg, g, t, lb"), message);
    }

    @Test
    void isWrittenWithoutTheNoiseOfBinaryFractions() {
        assertEquals("0.1 kft", new Amount(0.1, "kft").toString());
        assertEquals("4090000 ft", new Amount(4.09e6, "ft").toString());
    }
}
