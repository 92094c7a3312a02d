package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CableSpanTest {

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void aLengthIsPositiveAndFinite(double metres) {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> new CableSpan(metres, 0.7));
        assertEquals("a length must be positive and finite, not " + metres + " m", refused.getMessage());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 70, Double.NaN})
    void aNominalVelocityLiesBetweenNoneAndThatOfLight(double velocity) {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> new CableSpan(100, velocity));
        assertTrue(refused.getMessage().endsWith("between 0 and 1, not " + velocity), refused::getMessage);
    }

    @Test
    void aNominalVelocityMayBeUnknown() {
        assertEquals(100, new CableSpan(100, null).metres());
    }
}
