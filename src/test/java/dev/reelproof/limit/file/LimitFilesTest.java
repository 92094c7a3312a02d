package dev.reelproof.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.limit.LimitLibrary;
import dev.reelproof.limit.LimitSamples;
import dev.reelproof.limit.LimitSet;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LimitFilesTest {
    private static final List<String> SHIPPED = List.of(
            "category-3-25-pair-cable",
            "category-3-25-pair-cable",
            "category-3-cable",
            "category-3-cable",
            "category-5e-25-pair-cable",
            "category-5e-25-pair-cable",
            "category-5e-cable",
            "category-5e-cable",
            "category-6-cable",
            "category-6-cable",
            "category-6a-cable",
            "category-6a-cable",
            "category-8-cable",
            "category-8-cable",
            "iec-category-5e-cable",
            "iec-category-5e-cable",
            "iec-category-6-cable",
            "iec-category-6-cable",
            "iec-category-6a-cable",
            "iec-category-6a-cable",
            "iec-category-7-cable",
            "iec-category-7-cable",
            "us-buried-wire-22awg",
            "us-buried-wire-22awg",
            "us-buried-wire-22awg",
            "us-buried-wire-24awg",
            "us-buried-wire-24awg",
            "us-buried-wire-24awg",
            "us-filled-cable-19awg",
            "us-filled-cable-22awg",
            "us-filled-cable-24awg",
            "us-filled-cable-26awg",
            "us-filled-t1c-cable-19awg",
            "us-filled-t1c-cable-19awg",
            "us-filled-t1c-cable-22awg",
            "us-filled-t1c-cable-22awg",
            "us-filled-t1c-cable-24awg",
            "us-filled-t1c-cable-24awg",
            "us-terminating-cable-22awg",
            "us-terminating-cable-22awg",
            "us-terminating-cable-22awg",
            "us-terminating-cable-24awg",
            "us-terminating-cable-24awg",
            "us-terminating-cable-24awg");
    private static final Path SOUND = Path.of("src/test/resources/limits-sample/sound.yaml");

    private final ClassLoader usual = Thread.currentThread().getContextClassLoader();

    @TempDir
    Path folder;

    @AfterEach
    void restoreClassLoader() {
        Thread.currentThread().setContextClassLoader(usual);
    }

    private static LimitLibrary load(Optional<Path> own) {
        return LimitFiles.load(own, LimitSamples.LAW_CHECK);
    }

    private static List<String> ids(LimitLibrary library) {
        return library.all().stream().map(LimitSet::id).toList();
    }

    @Test
    void loadsTheSetsThatTheProgramShipsWith() {
        assertEquals(SHIPPED, ids(load(Optional.empty())));
    }

    @Test
    void loadsThemFromAJarWithASpaceInItsPath() throws IOException {
        Path jar = Files.createDirectory(folder.resolve("a folder")).resolve("program.jar");
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar))) {
            for (String id : List.of("category-6a-cable", "us-buried-wire-22awg")) {
                out.putNextEntry(new JarEntry("limits/" + id + ".yaml"));
                out.write(Files.readAllBytes(Path.of("limits", id + ".yaml")));
            }
        }
        try (URLClassLoader loader = new URLClassLoader(new URL[] {jar.toUri().toURL()}, null)) {
            Thread.currentThread().setContextClassLoader(loader);

            assertEquals(List.of("category-6a-cable", "us-buried-wire-22awg"), ids(load(Optional.empty())));
        }
    }

    @Test
    void addsThoseOfThePlantsOwnFolder() throws IOException {
        Files.copy(SOUND, folder.resolve("sample.yaml"));
        Files.writeString(folder.resolve("notes.txt"), "not a limit set");

        LimitLibrary library = load(Optional.of(folder));

        assertEquals(SHIPPED.size() + 1, library.all().size());
        assertEquals(
                "Sample cable",
                library.revision("sample-cable", 1).orElseThrow().title());
    }

    @Test
    void namesBothFilesOfOneIdAndRevision() throws IOException {
        Files.copy(Path.of("limits/category-6-cable.yaml"), folder.resolve("ours.yaml"));

        LimitSetException refused = assertThrows(LimitSetException.class, () -> load(Optional.of(folder)));

        assertEquals(
                List.of(new LimitSetException.Fault(
                        folder + "/ours.yaml",
                        "this is category-6-cable revision 1, which limits/category-6-cable.yaml is already;"
                                + " give a changed set the next revision")),
                refused.faults());
    }

    @Test
    void reportsTheFaultsOfAllFiles() throws IOException {
        String sound = Files.readString(SOUND);
        Files.writeString(folder.resolve("a.yaml"), sound.replace("lower: 48", "lower: 58"));
        Files.write(folder.resolve("b.yaml"), sound.getBytes(StandardCharsets.UTF_16));
        Files.writeString(folder.resolve("c.yaml"), sound.replace("read: false", "read: maybe"));

        LimitSetException refused = assertThrows(LimitSetException.class, () -> load(Optional.of(folder)));

        assertEquals(
                List.of(
                        folder + "/a.yaml:27 /requirements/2/lower: the lower figure 58 is above the upper figure 56",
                        folder + "/b.yaml: the file is not text in UTF-8; save it as UTF-8",
                        folder + "/c.yaml:16 /requirements/0/read: 'maybe' must be true or false"),
                refused.faults().stream().map(LimitSetException.Fault::toString).toList());
    }

    @Test
    void saysWhichFolderCannotBeRead() {
        Path missing = folder.resolve("missing");

        UncheckedIOException refused = assertThrows(UncheckedIOException.class, () -> load(Optional.of(missing)));

        assertEquals("cannot read the limit sets in " + missing, refused.getMessage());
    }
}
