package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.correction.Laws;
import dev.reelproof.limit.file.LimitSetReader;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every limit set that ships with the program. */
class ShippedSetsTest {
    static Stream<Path> files() {
        return LimitSamples.shippedFiles().stream();
    }

    private static LimitSet read(Path file) {
        return new LimitSetReader(Laws::named).read(file.toString(), LimitSamples.text(file));
    }

    @ParameterizedTest
    @MethodSource("files")
    void everyFigureHasASourceAndItsStatus(Path file) {
        LimitSet set = read(file);

        assertFalse(set.leftOut().isEmpty(), "a set says what its source demands and it does not judge");
        for (Requirement requirement : set.requirements()) {
            String words = requirement.source().words();
            assertTrue(words.endsWith(" (read)") || words.endsWith(" (from memory)"), words);
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void theFileIsNamedAfterTheSetAndItsRevision(Path file) {
        LimitSet set = read(file);
        String suffix = set.revision() == 1 ? "" : "-revision-" + set.revision();

        assertEquals(set.id() + suffix + ".yaml", file.getFileName().toString());
    }

    /** The high-voltage tests of every set name the danger. */
    @ParameterizedTest
    @MethodSource("files")
    void highVoltageComesWithACaution(Path file) {
        for (Requirement requirement : read(file).requirements()) {
            switch (requirement.property()) {
                case DIELECTRIC_WITHSTAND, SPARK_FAULTS, INSULATION_FAULTS, CONTINUITY_FAULTS -> assertTrue(
                        requirement.condition().orElseThrow().contains("Caution: "), requirement.id());
                default -> {
                    // no voltage that harms
                }
            }
        }
    }

    @Test
    void theLibraryHoldsBothFamiliesAndTheRegulation() {
        LimitLibrary library =
                LimitLibrary.of(files().map(ShippedSetsTest::read).toList());

        assertEquals(
                List.of(
                        "category-3-25-pair-cable 1",
                        "category-3-25-pair-cable 2",
                        "category-3-cable 1",
                        "category-3-cable 2",
                        "category-5e-25-pair-cable 1",
                        "category-5e-25-pair-cable 2",
                        "category-5e-cable 1",
                        "category-5e-cable 2",
                        "category-6-cable 1",
                        "category-6-cable 2",
                        "category-6a-cable 1",
                        "category-6a-cable 2",
                        "category-8-cable 1",
                        "category-8-cable 2",
                        "iec-category-5e-cable 1",
                        "iec-category-5e-cable 2",
                        "iec-category-6-cable 1",
                        "iec-category-6-cable 2",
                        "iec-category-6a-cable 1",
                        "iec-category-6a-cable 2",
                        "iec-category-7-cable 1",
                        "iec-category-7-cable 2",
                        "us-buried-wire-22awg 1",
                        "us-buried-wire-22awg 2",
                        "us-buried-wire-22awg 3",
                        "us-buried-wire-24awg 1",
                        "us-buried-wire-24awg 2",
                        "us-buried-wire-24awg 3",
                        "us-filled-cable-19awg 1",
                        "us-filled-cable-22awg 1",
                        "us-filled-cable-24awg 1",
                        "us-filled-cable-26awg 1",
                        "us-filled-t1c-cable-19awg 1",
                        "us-filled-t1c-cable-19awg 2",
                        "us-filled-t1c-cable-22awg 1",
                        "us-filled-t1c-cable-22awg 2",
                        "us-filled-t1c-cable-24awg 1",
                        "us-filled-t1c-cable-24awg 2",
                        "us-terminating-cable-22awg 1",
                        "us-terminating-cable-22awg 2",
                        "us-terminating-cable-22awg 3",
                        "us-terminating-cable-24awg 1",
                        "us-terminating-cable-24awg 2",
                        "us-terminating-cable-24awg 3"),
                library.all().stream()
                        .map(set -> set.id() + " " + set.revision())
                        .toList());
    }

    /** The third revision of terminating cable closes a false accept and therefore comes before the second would have. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, 2026-12-01, 1, 3",
        "us-terminating-cable-24awg, 2026-12-01, 1, 3",
        "us-buried-wire-22awg, 2027-01-01, 1, 3",
        "us-buried-wire-24awg, 2027-01-01, 1, 3",
        "us-filled-t1c-cable-19awg, 2027-01-01, 1, 2",
        "us-filled-t1c-cable-22awg, 2027-01-01, 1, 2",
        "us-filled-t1c-cable-24awg, 2027-01-01, 1, 2",
        "category-6a-cable, 2027-01-01, 1, 2",
        "iec-category-6a-cable, 2027-01-01, 1, 2"
    })
    void theNewestRevisionJudgesFromItsFirstDayOn(String id, LocalDate firstDay, int before, int from) {
        LimitLibrary library =
                LimitLibrary.of(files().map(ShippedSetsTest::read).toList());

        assertEquals(
                before, library.current(id, firstDay.minusDays(1)).orElseThrow().revision());
        for (LocalDate day : List.of(firstDay, LocalDate.of(2027, 1, 1), LocalDate.of(2030, 1, 1))) {
            assertEquals(from, library.current(id, day).orElseThrow().revision());
        }
    }
}
