package dev.reelproof.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.digest.Sha256;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** A record refuses what no record can be. */
class TestRecordTest {
    private static final String DIGEST = Sha256.hex("some upload");
    private static final OffsetDateTime TESTED = OffsetDateTime.parse("2026-03-02T14:05:00Z");
    private static final KeptOriginal ORIGINAL = new KeptOriginal(0, "result", "application/json", DIGEST, 11);

    private static TestRecord record(
            String plant, String reel, int attempt, OffsetDateTime started, String sha256, KeptOriginal... originals) {
        return new TestRecord(
                plant,
                UUID.fromString("0190163d-8694-739b-aea5-966c26f8ad91"),
                TESTED.plusMinutes(1),
                reel,
                new Product("P-4", "four pairs", "some-set", 4, "23 AWG", null, Map.of(), List.of()),
                attempt,
                new Judgement("some-set", 1, DIGEST, "test", Verdict.INCOMPLETE, List.of(), List.of(), null),
                Length.ofMetres(305),
                Temperature.ofCelsius(20),
                null,
                null,
                started,
                TESTED,
                List.of(),
                List.of(),
                sha256,
                List.of(originals),
                null);
    }

    private static void refused(String words, Executable making) {
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, making);
        assertTrue(refusal.getMessage().contains(words), refusal.getMessage());
    }

    @Test
    void takesWhatCanBe() {
        assertEquals(1, record("north", "R-1", 1, TESTED, DIGEST, ORIGINAL).attempt());
        assertEquals("R-1", record("north", "R-1", 2, null, DIGEST).reel());
    }

    @Test
    void refusesWhatCannotBe() {
        refused("plant", () -> record(" ", "R-1", 1, null, DIGEST));
        refused("reel", () -> record("north", "", 1, null, DIGEST));
        refused("from 1, not 0", () -> record("north", "R-1", 0, null, DIGEST));
        refused("after it finished", () -> record("north", "R-1", 1, TESTED.plusNanos(1), DIGEST));
        refused("64 hexadecimal digits", () -> record("north", "R-1", 1, null, DIGEST.substring(1)));
        refused("64 hexadecimal digits", () -> record("north", "R-1", 1, null, DIGEST.toUpperCase()));
        refused("64 hexadecimal digits", () -> record("north", "R-1", 1, null, null));
        refused(
                "counted from 0",
                () -> record(
                        "north", "R-1", 1, null, DIGEST, new KeptOriginal(1, "result", "application/json", DIGEST, 1)));
    }

    @Test
    void aPartRefusesWhatCannotBe() {
        refused("negative", () -> new KeptOriginal(-1, "result", "", DIGEST, 1));
        refused("negative", () -> new KeptOriginal(0, "result", "", DIGEST, -1));
        refused("name", () -> new KeptOriginal(0, " ", "", DIGEST, 1));
        refused("64 hexadecimal digits", () -> new KeptOriginal(0, "result", "", "abc", 1));
    }
}
