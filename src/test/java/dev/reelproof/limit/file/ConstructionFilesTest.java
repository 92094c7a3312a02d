package dev.reelproof.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.correction.Laws;
import dev.reelproof.limit.Construction;
import dev.reelproof.limit.Constructions;
import dev.reelproof.limit.LimitSet;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ConstructionFilesTest {
    private static final String OURS = "id: ours\ntitle: Ours\nlimit-sets: [{ limit-set: category-6-cable }]\n";

    @TempDir
    Path folder;

    private static Constructions load(Optional<Path> own) {
        Set<String> sets = LimitFiles.load(Optional.empty(), Laws::named).all().stream()
                .map(LimitSet::id)
                .collect(Collectors.toSet());
        return ConstructionFiles.load(own, sets);
    }

    @Test
    void theShippedOnesNameShippedSets() {
        Constructions shipped = load(Optional.empty());
        assertEquals(
                List.of(
                        "iec-category-6a-cable",
                        "category-6-cable",
                        "iec-category-6-cable",
                        "category-5e-cable",
                        "iec-category-5e-cable",
                        "category-3-cable"),
                shipped.othersOf("category-6a-cable", "23 AWG"));
        assertEquals(List.of(), shipped.othersOf("us-terminating-cable-24awg", "24 AWG"));
        assertEquals(List.of("us-buried-wire-22awg"), shipped.othersOf("us-buried-wire-24awg", "22 AWG"));
    }

    @Test
    void aPlantAddsItsOwn() throws IOException {
        Files.writeString(Files.createDirectory(folder.resolve("constructions")).resolve("ours.yaml"), OURS);
        assertEquals(
                List.of("ours"),
                load(Optional.of(folder)).all().stream()
                        .map(Construction::id)
                        .filter(id -> id.equals("ours"))
                        .toList());
    }

    @Test
    void aPlantNeedNotHaveAny() {
        assertEquals(load(Optional.empty()), load(Optional.of(folder)));
    }

    @Test
    void tellsAllFaultsOfAllFiles() throws IOException {
        Path own = Files.createDirectory(folder.resolve("constructions"));
        Files.writeString(own.resolve("a.yaml"), OURS.replace("id: ours", "id: us-buried-wire"));
        Files.write(own.resolve("b.yaml"), OURS.getBytes(StandardCharsets.UTF_16));
        Files.writeString(own.resolve("c.yaml"), OURS.replace("category-6-cable", "category-66-cable"));
        LimitSetException refused = assertThrows(LimitSetException.class, () -> load(Optional.of(folder)));
        assertEquals(
                List.of(
                        folder + "/constructions/a.yaml",
                        folder + "/constructions/b.yaml",
                        folder + "/constructions/c.yaml:3 /limit-sets/0/limit-set"),
                refused.faults().stream().map(LimitSetException.Fault::where).toList());
    }
}
