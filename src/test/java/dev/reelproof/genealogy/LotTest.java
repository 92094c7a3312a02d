package dev.reelproof.genealogy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.intake.Identifier;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LotTest {
    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-02-11T12:00:00Z");
    private static final LotInput WIRE = new LotInput(new LotId("AC-1"), new Amount(1, "km"));
    private static final LotInput COMPOUND = new LotInput(new LotId("PE-1"), new Amount(2, "kg"));

    @Test
    void knowsTheKindsOfTheTrade() {
        assertEquals(
                List.of(
                        "rod",
                        "breakdown-wire",
                        "annealed-conductor",
                        "insulated-conductor",
                        "twisted-pair",
                        "unit",
                        "core",
                        "jacketed-cable",
                        "reel",
                        "insulation-compound",
                        "colour-concentrate",
                        "filling-compound",
                        "tape",
                        "shield",
                        "jacket-compound"),
                Arrays.stream(LotKind.values()).map(LotKind::word).toList());
        for (LotKind kind : LotKind.values()) {
            assertEquals(kind, LotKind.named(kind.word()));
        }
        String message = assertThrows(IllegalArgumentException.class, () -> LotKind.named("Rod"))
                .getMessage();
        assertTrue(message.startsWith("unknown kind of lot 'Rod'; known kinds: rod, breakdown-wire"), message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " A", "A ", "-A", "A/B", "A\u0000", "Ä1", "A B"})
    void refusesWhatCannotBeInAnAddress(String id) {
        assertThrows(IllegalArgumentException.class, () -> new LotId(id));
    }

    @Test
    void isIdentifiedAsAllThatIsSentIs() {
        for (int mark = 0; mark <= 0x180; mark++) {
            for (String id : List.of("" + (char) mark, "A" + (char) mark, "A" + (char) mark + "A")) {
                assertEquals(id.matches(Identifier.PATTERN), LotId.isIdentifier(id), () -> "'" + id + "'");
            }
        }
        assertThrows(IllegalArgumentException.class, () -> new LotId("A".repeat(65)));
        assertEquals("A".repeat(64), new LotId("A".repeat(64)).value());
    }

    @Test
    void holdsItsTimeInUtcToTheMicrosecond() {
        Lot lot = lot(OffsetDateTime.parse("2026-02-11T06:00:00.123456789-06:00"), "a", WIRE);
        assertEquals(OffsetDateTime.parse("2026-02-11T12:00:00.123456Z"), lot.made());
    }

    @Test
    void refusesImpossibleYearsAndNames() {
        assertThrows(IllegalArgumentException.class, () -> lot(NOON.withYear(1899), "a"));
        assertThrows(IllegalArgumentException.class, () -> lot(NOON.withYear(10_000), "a"));
        assertThrows(IllegalArgumentException.class, () -> lot(NOON, " "));
        assertThrows(IllegalArgumentException.class, () -> lot(NOON, "a\nb"));
        assertThrows(IllegalArgumentException.class, () -> lot(NOON, "a".repeat(101)));
        assertEquals(null, lot(NOON, null).step());
    }

    @Test
    void refusesInputsBeyondAnyCable() {
        LotInput[] inputs = Collections.nCopies(10_001, WIRE).toArray(LotInput[]::new);
        assertThrows(IllegalArgumentException.class, () -> lot(NOON, "a", inputs));
    }

    @Test
    void isTheSameWhateverTheOrderOfItsInputs() {
        assertEquals(List.of(), lot(NOON, "a", WIRE, COMPOUND).differencesFrom(lot(NOON, "a", COMPOUND, WIRE)));
    }

    @Test
    void namesWhatDiffers() {
        assertEquals(
                List.of("made", "step", "inputs"),
                lot(NOON, "a", WIRE).differencesFrom(lot(NOON.plusHours(1), null, WIRE, COMPOUND)));
        assertEquals(List.of("inputs"), lot(NOON, "a", WIRE).differencesFrom(lot(NOON, "a", WIRE, WIRE)));
    }

    private static Lot lot(OffsetDateTime made, String step, LotInput... inputs) {
        return new Lot(
                new LotId("IC-1"),
                "north",
                LotKind.INSULATED_CONDUCTOR,
                new Amount(1, "km"),
                made,
                step,
                null,
                List.of(inputs));
    }
}
