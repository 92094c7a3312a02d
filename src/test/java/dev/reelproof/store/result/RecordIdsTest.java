package dev.reelproof.store.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class RecordIdsTest {
    private static final Instant RECEIVED = Instant.parse("2026-03-02T14:09:30.123Z");

    @Test
    void carriesItsTimeOfReceipt() {
        UUID id = RecordIds.at(RECEIVED);
        assertEquals(7, id.version());
        assertEquals(2, id.variant());
        assertEquals(Optional.of(RECEIVED), RecordIds.received(id));
        assertNotEquals(id, RecordIds.at(RECEIVED));
    }

    /** The example of RFC 9562 appendix A.6 (from memory): 2022-02-22 14:22:22.00 GMT-5. */
    @Test
    void readsTheExampleOfTheStandard() {
        assertEquals(
                Optional.of(Instant.parse("2022-02-22T19:22:22Z")),
                RecordIds.received(UUID.fromString("017F22E2-79B0-7CC3-98C4-DC0C0C07398F")));
    }

    @Test
    void knowsThatARandomIdIsNone() {
        assertEquals(Optional.empty(), RecordIds.received(UUID.fromString("c56a4180-65aa-42ec-a945-5fd21dec0538")));
    }
}
