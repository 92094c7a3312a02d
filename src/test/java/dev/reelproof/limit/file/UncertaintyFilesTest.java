package dev.reelproof.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.UncertaintyLibrary;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Property;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class UncertaintyFilesTest {
    private static final Path SOUND = Path.of("src/test/resources/uncertainty-sample/sound.yaml");
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    @TempDir
    Path folder;

    private Path own() throws IOException {
        return Files.createDirectories(folder.resolve("uncertainty"));
    }

    private static List<String> words(UncertaintyLibrary library) {
        return library.all().stream().map(UncertaintyModel::words).toList();
    }

    @Test
    void loadsTheModelThatTheProgramShipsWith() {
        UncertaintyModel model =
                UncertaintyFiles.load(Optional.empty()).current("test-bay", DAY).orElseThrow();
        assertTrue(model.entry("default", Property.CONDUCTOR_RESISTANCE).isPresent());
        assertTrue(model.text().contains("common practice, no source; replace with those of your calibration"));
    }

    /** What is shipped is nobody's calibration, and each entry says so. */
    @Test
    void everyShippedFigureSaysThatItHasNoSource() {
        UncertaintyModel model =
                UncertaintyFiles.load(Optional.empty()).current("test-bay", DAY).orElseThrow();
        model.classes().values().forEach(properties -> properties
                .values()
                .forEach(entry -> assertEquals(
                        "common practice, no source; replace with those of your calibration (from memory)",
                        entry.source().words())));
    }

    /** The first revision says nothing of correlation: all common, which leaves nothing of a difference. It must not be in force. */
    @Test
    void fromTheFirstDayOnTheModelInForceSaysHowFarReadingsErrAlike() {
        UncertaintyLibrary library = UncertaintyFiles.load(Optional.empty());
        for (LocalDate day : List.of(LocalDate.of(2020, 1, 1), DAY, LocalDate.of(2027, 1, 1))) {
            UncertaintyModel model = library.current("test-bay", day).orElseThrow();
            assertEquals(2, model.revision());
            for (Property differenced : List.of(Property.CONDUCTOR_RESISTANCE, Property.PROPAGATION_DELAY)) {
                assertEquals(
                        0, model.entry("default", differenced).orElseThrow().correlation(), differenced.id());
            }
            for (Property summed : List.of(Property.NEXT, Property.ACR_F, Property.FEXT, Property.INSERTION_LOSS)) {
                assertEquals(1, model.entry("default", summed).orElseThrow().correlation(), summed.id());
            }
        }
    }

    /** The second revision says the same of a reading as the first; the length is only told in two parts. */
    @Test
    void theSecondRevisionChangesNoReadingsUncertainty() {
        List<UncertaintyModel> both = UncertaintyFiles.load(Optional.empty()).all();
        UncertaintyModel first = both.get(0);
        UncertaintyModel second = both.get(1);
        first.classes().get("default").forEach((property, entry) -> {
            InstrumentUncertainty same = second.entry("default", property).orElseThrow();
            assertEquals(entry.words(), same.words(), property.id());
            assertEquals(InstrumentUncertainty.ALL_COMMON, entry.correlation(), property.id());
        });
        for (double metres : new double[] {1, 305, 3000}) {
            assertEquals(
                    first.length().standard(metres, Double.NaN).orElseThrow(),
                    Math.hypot(
                            second.length().standard(metres, Double.NaN).orElseThrow(),
                            second.lengthMarks()
                                    .orElseThrow()
                                    .standard(metres, Double.NaN)
                                    .orElseThrow()),
                    1e-12);
        }
    }

    @Test
    void aFolderWithoutModelsOfItsOwnLeavesTheShipped() {
        assertEquals(
                List.of("test-bay revision 1", "test-bay revision 2"),
                words(UncertaintyFiles.load(Optional.of(folder))));
    }

    @Test
    void addsThoseOfThePlant() throws IOException {
        Files.copy(SOUND, own().resolve("bay.yaml"));
        assertEquals(
                List.of("sample-bay revision 1", "test-bay revision 1", "test-bay revision 2"),
                words(UncertaintyFiles.load(Optional.of(folder))));
    }

    @Test
    void aPlantsOwnReplacesTheShippedOfTheSameId() throws IOException {
        Files.writeString(
                own().resolve("bay.yaml"),
                Files.readString(SOUND)
                        .replace("id: sample-bay", "id: test-bay")
                        .replace("revision: 1", "revision: 7"));
        UncertaintyLibrary library = UncertaintyFiles.load(Optional.of(folder));
        assertEquals(List.of("test-bay revision 7"), words(library));
        assertEquals(Optional.empty(), library.current("test-bay", LocalDate.of(2025, 12, 31)));
        assertEquals(
                "Sample bay", library.current("test-bay", DAY).orElseThrow().title());
    }

    @Test
    void theSameRevisionTwiceIsRefused() throws IOException {
        Files.copy(SOUND, own().resolve("a.yaml"));
        Files.copy(SOUND, own().resolve("b.yaml"));
        Files.write(own().resolve("c.yaml"), new byte[] {(byte) 0xff});
        LimitSetException refused =
                assertThrows(LimitSetException.class, () -> UncertaintyFiles.load(Optional.of(folder)));
        assertEquals(2, refused.faults().size());
        assertTrue(refused.faults().get(0).message().contains("give a changed model the next revision"));
        assertTrue(refused.faults().get(1).message().contains("UTF-8"));
    }
}
