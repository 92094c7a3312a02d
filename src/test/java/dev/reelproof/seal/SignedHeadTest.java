package dev.reelproof.seal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SignedHeadTest {
    private static final SealKey KEY = SealKey.make();
    private static final Leaf LEAF = new Leaf(LeafKind.CERTIFICATE, "north", "N-2026-1/1", List.of("certificate 00"));
    private static final TreeHead HEAD =
            new TreeHead("north", 1, LEAF.hash(), Instant.parse("2026-11-29T12:00:00.123Z"));

    @Test
    void whatIsHashedAndSignedIsTextThatCanBeMadeAgain() {
        assertEquals(
                "reelproof leaf 1\ncertificate\nnorth\nN-2026-1/1\ncertificate 00\n",
                new String(LEAF.bytes(), StandardCharsets.UTF_8));
        assertEquals(
                "reelproof head 1\nnorth\n1\n" + LEAF.hash().hex() + "\n2026-11-29T12:00:00.123Z\n",
                new String(HEAD.bytes(), StandardCharsets.UTF_8));
    }

    @Test
    void aHeadIsKnownByItsKeyAndNoOther() {
        SignedHead signed = KEY.sign(HEAD);
        assertTrue(KEY.open().signed(signed));
        assertFalse(SealKey.make().open().signed(signed));
        TreeHead longer = new TreeHead("north", 2, HEAD.root(), HEAD.at());
        assertFalse(KEY.open().signed(new SignedHead(longer, signed.keyId(), signed.signature())));
        assertFalse(KEY.open().signed(new SignedHead(HEAD, signed.keyId(), "00")));
        assertFalse(KEY.open().signed(new SignedHead(HEAD, signed.keyId(), "no signature")));
    }

    @Test
    void aKeyIsTheSameAfterItWasWrittenAndRead() {
        SealKey again = SealKey.ofBase64(KEY.secretBase64(), KEY.open().base64());
        assertTrue(KEY.open().signed(again.sign(HEAD)));
        String other = SealKey.make().open().base64();
        assertThrows(IllegalArgumentException.class, () -> SealKey.ofBase64(KEY.secretBase64(), other));
    }

    @Test
    void aProofSaysWhatIsWrong() {
        InclusionProof proof = new InclusionProof(LEAF, 0, List.of(), KEY.sign(HEAD));
        assertEquals(Optional.empty(), proof.fault(KEY.open()));
        Leaf other = new Leaf(LeafKind.CERTIFICATE, "north", "N-2026-1/1", List.of("certificate 01"));
        assertEquals(
                Optional.of("The path does not lead from certificate N-2026-1/1 to the log's head of"
                        + " 2026-11-29T12:00:00.123Z."),
                new InclusionProof(other, 0, List.of(), KEY.sign(HEAD)).fault(KEY.open()));
        assertTrue(proof.fault(SealKey.make().open()).orElseThrow().contains("was not signed by the key"));
    }

    @Test
    void noLineMayPassForTwo() {
        assertThrows(IllegalArgumentException.class, () -> new Leaf(LeafKind.NOTE, "north", "a\nb", List.of("part")));
        assertThrows(IllegalArgumentException.class, () -> new Leaf(LeafKind.NOTE, "north", "a", List.of()));
        assertThrows(IllegalArgumentException.class, () -> Hash.ofHex("00"));
    }
}
