package dev.reelproof.store.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.digest.Sha256;
import dev.reelproof.seal.Hash;
import dev.reelproof.seal.SealKey;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.seal.TreeHead;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeadsFileTest {
    private static final SealKey KEY = SealKey.make();

    @TempDir
    Path folder;

    private static SignedHead head(String plant, long size) {
        return KEY.sign(new TreeHead(
                plant, size, Hash.of(Sha256.of(new byte[] {(byte) size})), Instant.parse("2026-03-02T14:05:00.123Z")));
    }

    @Test
    void headsAreReadAsTheyWereWritten() {
        Path file = folder.resolve("made").resolve("heads.jsonl");
        HeadsFile heads = new HeadsFile(file);
        assertEquals(List.of(), heads.all());
        assertEquals(Optional.empty(), heads.newest("north"));
        heads.append(head("north", 1));
        heads.append(head("south", 2));
        heads.append(head("north", 3));
        assertEquals(List.of(head("north", 1), head("south", 2), head("north", 3)), new HeadsFile(file).all());
        assertEquals(Optional.of(head("north", 3)), heads.newest("north"));
        assertEquals(Optional.of(head("north", 3)), new HeadsFile(file).newest("north"));
    }

    @Test
    void whatACrashCutOffGivesWayToTheNextHead() throws Exception {
        Path file = folder.resolve("heads.jsonl");
        new HeadsFile(file).append(head("north", 1));
        Files.writeString(file, "{\"plant\":\"north\",\"si", StandardOpenOption.APPEND);
        HeadsFile afterCrash = new HeadsFile(file);
        assertEquals(List.of(head("north", 1)), afterCrash.all());
        afterCrash.append(head("north", 2));
        assertEquals(List.of(head("north", 1), head("north", 2)), new HeadsFile(file).all());
    }

    @Test
    void aLineThatIsNoHeadIsNamed() throws Exception {
        Path file = folder.resolve("heads.jsonl");
        new HeadsFile(file).append(head("north", 1));
        Files.writeString(file, "{\"plant\":\"north\"}\n", StandardOpenOption.APPEND);
        IllegalStateException refused = assertThrows(IllegalStateException.class, () -> new HeadsFile(file).all());
        assertTrue(refused.getMessage().contains("heads.jsonl:2"), refused.getMessage());
    }
}
