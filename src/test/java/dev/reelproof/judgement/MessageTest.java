package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** A sentence takes its parts, and never shows a brace to a reader. */
class MessageTest {

    @Test
    void takesAPartWhoseNameHoldsADigit() {
        assertEquals("SHA-256 ab12.", Message.fill("SHA-256 {sha256}.", Map.of("sha256", "ab12")));
    }

    @Test
    void leavesASectionOutOfWhichAPartIsNotThere() {
        assertEquals("pair 3", Message.fill("pair {pair}[ at {place2}]", Map.of("pair", "3")));
        assertEquals(
                "pair 3 at the far end",
                Message.fill("pair {pair}[ at {place2}]", Map.of("pair", "3", "place2", "the far end")));
    }

    @Test
    void refusesASentenceOfWhichAPartIsNotThere() {
        assertThrows(IllegalArgumentException.class, () -> Message.fill("SHA-256 {sha256}.", Map.of()));
    }
}
