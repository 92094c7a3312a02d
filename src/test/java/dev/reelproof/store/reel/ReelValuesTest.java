package dev.reelproof.store.reel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.Disposition.State;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.quantity.Length;
import dev.reelproof.record.RegisteredReel;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Reels and where they went refuse what cannot be; a change says what it changed. */
class ReelValuesTest {
    private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-03-02T14:05:00Z");

    private static RegisteredReel reel(String plant, String id, String product, double length, String unit) {
        return new RegisteredReel(plant, id, product, Length.ofMetres(305), length, unit, null, null, null, NOW);
    }

    private static Disposition entry(State state, String recipient, String actor) {
        return new Disposition(new LotId("R-1"), state, recipient, null, actor, NOW);
    }

    private static void refused(String words, Executable making) {
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, making);
        assertTrue(refusal.getMessage().contains(words), refusal.getMessage());
    }

    @Test
    void aReelRefusesWhatCannotBe() {
        assertEquals("R-1", reel("north", "R-1", "P", 1000, "ft").id());
        refused("plant", () -> reel("", "R-1", "P", 1, "m"));
        refused("number", () -> reel("north", " ", "P", 1, "m"));
        refused("product", () -> reel("north", "R-1", null, 1, "m"));
        refused("unit", () -> reel("north", "R-1", "P", 1, ""));
        refused("positive", () -> reel("north", "R-1", "P", 0, "m"));
        refused("positive", () -> reel("north", "R-1", "P", Double.NaN, "m"));
        refused("positive", () -> reel("north", "R-1", "P", Double.POSITIVE_INFINITY, "m"));
    }

    @Test
    void whatWasShippedWentToSomebodyAndNothingElseDid() {
        assertEquals(
                "Invented Networks",
                entry(State.SHIPPED, "Invented Networks", "anna").recipient());
        assertEquals(State.SCRAPPED, entry(State.SCRAPPED, null, "anna").state());
        refused("went to somebody", () -> entry(State.SHIPPED, null, "anna"));
        refused("went to somebody", () -> entry(State.IN_STOCK, "Invented Networks", "anna"));
        refused("who told it", () -> entry(State.IN_STOCK, null, " "));
    }

    @Test
    void aChangeNamesTheKeysThatDiffer() {
        Changes changes = Changes.between(Optional.of("{\"a\": 1, \"b\": 2}"), "{\"b\": 3, \"a\": 1, \"c\": null}");
        assertEquals(Set.of("b"), changes.values().keySet());
        assertFalse(changes.isNew());
        assertFalse(changes.isEmpty());
        assertTrue(Changes.between(Optional.of("{\"a\": 1}"), "{\"a\": 1}").isEmpty());
        assertFalse(Changes.between(Optional.empty(), "{}").isEmpty(), "what is new is a change");
    }
}
