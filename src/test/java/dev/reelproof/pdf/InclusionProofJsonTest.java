package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.digest.Sha256;
import dev.reelproof.seal.CarriedProof;
import dev.reelproof.seal.InclusionProof;
import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.SealKey;
import dev.reelproof.seal.TreeHashing;
import dev.reelproof.seal.TreeHead;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a certificate carries of the log is read and checked with nothing else at hand. */
class InclusionProofJsonTest {
    private static final SealKey KEY = SealKey.make();
    private static final Instant AT = Instant.parse("2026-11-29T12:00:00.123456Z");
    private static final String FILE = Sha256.hex("a result");
    private static final Leaf LEFT = new Leaf(LeafKind.RECORD, "north", "r", List.of("test_record 00"));

    private static CarriedProof of(Leaf leaf) {
        TreeHead head = new TreeHead("north", 2, TreeHashing.node(LEFT.hash(), leaf.hash()), AT);
        return new CarriedProof(new InclusionProof(leaf, 1, List.of(LEFT.hash()), KEY.sign(head)), KEY.open());
    }

    private static final String TEXT = InclusionProofJson.write(of(Leaf.ofAttachment("north", FILE)));

    @Test
    void whatWasWrittenIsReadAndHolds() {
        CarriedProof read = InclusionProofJson.read(TEXT);
        assertEquals(Optional.empty(), read.faultAsTo(FILE));
        assertEquals(KEY.open().id(), read.key().id());
        assertEquals(TEXT, InclusionProofJson.write(read));
    }

    @Test
    void aProofOfAnotherFileOrOfARowShowsNothing() {
        CarriedProof read = InclusionProofJson.read(TEXT);
        assertTrue(read.faultAsTo(Sha256.hex("another")).orElseThrow().contains("not of the attached file"));
        Leaf row = new Leaf(LeafKind.UPLOAD, "north", FILE, List.of("sha256 " + FILE));
        assertEquals(Optional.empty(), of(row).fault());
        assertTrue(of(row).faultAsTo(FILE).isPresent());
        Leaf mixed = new Leaf(LeafKind.ATTACHMENT, "north", FILE, List.of("sha256 " + Sha256.hex("another")));
        assertTrue(of(mixed).faultAsTo(FILE).isPresent());
    }

    @Test
    void anyChangedFigureIsFound() {
        for (String change : List.of(
                "\"index\":1|\"index\":0",
                "\"size\":2|\"size\":3",
                "12:00:00.123456Z|12:00:01.123456Z",
                FILE.substring(0, 8) + "|00000000",
                LEFT.hash().hex() + "|" + FILE)) {
            String[] parts = change.split("\\|");
            String changed = TEXT.replace(parts[0], parts[1]);
            assertTrue(!changed.equals(TEXT), change);
            assertTrue(InclusionProofJson.read(changed).faultAsTo(FILE).isPresent(), change);
        }
        String anotherKey =
                TEXT.replace(KEY.open().base64(), SealKey.make().open().base64());
        assertTrue(InclusionProofJson.read(anotherKey).fault().isPresent());
    }

    @Test
    void whatIsNoProofIsRefused() {
        for (String none : List.of("", "null", "{}", "[1]", "not JSON", TEXT.substring(0, TEXT.length() / 2))) {
            assertThrows(IllegalArgumentException.class, () -> InclusionProofJson.read(none), none);
        }
        String noKey = TEXT.replace(KEY.open().base64(), "AAAA");
        assertThrows(IllegalArgumentException.class, () -> InclusionProofJson.read(noKey));
    }
}
