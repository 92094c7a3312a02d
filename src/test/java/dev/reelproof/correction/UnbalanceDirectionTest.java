package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class UnbalanceDirectionTest {

    @Test
    void isTheShareOfPairsInWhichTheFirstConductorIsHigher() {
        assertEquals(100, UnbalanceDirection.percent(9.1, 9.0, 9.2, 9.0), 0);
        assertEquals(0, UnbalanceDirection.percent(9.0, 9.1, 9.0, 9.2), 0);
        assertEquals(50, UnbalanceDirection.percent(9.1, 9.0, 9.0, 9.2), 0);
        assertEquals(25, UnbalanceDirection.percent(9.1, 9.0, 9.0, 9.2, 9.0, 9.2, 9.0, 9.2), 0);
    }

    @Test
    void equalConductorsSpeakForNeitherSide() {
        assertEquals(50, UnbalanceDirection.percent(9.0, 9.0), 0);
        assertEquals(75, UnbalanceDirection.percent(9.0, 9.0, 9.1, 9.0), 0);
    }

    @Test
    void exchangingTheConductorsGivesTheRest() {
        double[] one = {9.1, 9.0, 9.3, 9.2, 9.0, 9.0, 9.0, 9.2};
        double[] other = {9.0, 9.1, 9.2, 9.3, 9.0, 9.0, 9.2, 9.0};
        assertEquals(100, UnbalanceDirection.percent(one) + UnbalanceDirection.percent(other), 0);
    }

    @Test
    void needsWholePairs() {
        assertThrows(IllegalArgumentException.class, UnbalanceDirection::percent);
        String message = assertThrows(IllegalArgumentException.class, () -> UnbalanceDirection.percent(9.1, 9.0, 9.2))
                .getMessage();
        assertTrue(message.contains("both conductors of each pair"), message);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -9, Double.NaN, Double.POSITIVE_INFINITY})
    void needsResistances(double none) {
        assertThrows(IllegalArgumentException.class, () -> UnbalanceDirection.percent(9.1, none));
        assertThrows(IllegalArgumentException.class, () -> PairResistance.loop(9.1, none));
        assertThrows(IllegalArgumentException.class, () -> PairResistance.loop(none, 9.1));
    }

    @Test
    void theLoopIsBothConductorsInARow() {
        assertEquals(18.4, PairResistance.loop(9.1, 9.3), 1e-12);
    }
}
