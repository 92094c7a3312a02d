package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.limit.file.LimitSetReader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LimitLibraryTest {
    private static final String SOUND = LimitSamples.text(Path.of("src/test/resources/limits-sample/sound.yaml"));

    private static LimitSet set(String id, int revision, String effective) {
        return new LimitSetReader(LimitSamples.LAW_CHECK)
                .read(
                        "sample.yaml",
                        SOUND.replace("id: sample-cable", "id: " + id)
                                .replace("revision: 1", "revision: " + revision)
                                .replace("2026-01-01", effective));
    }

    private final LimitSet first = set("a-cable", 1, "2026-01-01");
    private final LimitSet second = set("a-cable", 2, "2026-03-01");
    private final LimitSet other = set("b-cable", 1, "2026-02-01");
    private final LimitLibrary library = LimitLibrary.of(List.of(other, second, first));

    @Test
    void currentIsTheHighestRevisionEffectiveOnOrBeforeTheDay() {
        assertEquals(Optional.empty(), library.current("a-cable", LocalDate.of(2025, 12, 31)));
        assertEquals(Optional.of(first), library.current("a-cable", LocalDate.of(2026, 1, 1)));
        assertEquals(Optional.of(first), library.current("a-cable", LocalDate.of(2026, 2, 28)));
        assertEquals(Optional.of(second), library.current("a-cable", LocalDate.of(2026, 3, 1)));
        assertEquals(Optional.empty(), library.current("c-cable", LocalDate.of(2026, 3, 1)));
    }

    @Test
    void aPastRevisionIsStillFound() {
        assertEquals(Optional.of(first), library.revision("a-cable", 1));
        assertEquals(Optional.empty(), library.revision("a-cable", 3));
        assertEquals(Optional.empty(), library.revision("b-cable", 2));
    }

    @Test
    void listsAllByIdAndRevision() {
        assertEquals(List.of(first, second, other), library.all());
    }

    @Test
    void refusesTwoOfOneIdAndRevision() {
        LimitSet same = set("a-cable", 2, "2026-04-01");

        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> LimitLibrary.of(List.of(first, second, same)));

        assertEquals(
                "there are two limit sets a-cable revision 2; a changed set needs the next revision",
                refused.getMessage());
    }

    @Test
    void twoRevisionsOfOneSetAreALibrary() {
        assertEquals(
                List.of(first, second), LimitLibrary.of(List.of(second, first)).all());
    }
}
