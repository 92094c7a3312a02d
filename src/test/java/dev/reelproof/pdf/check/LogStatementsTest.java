package dev.reelproof.pdf.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.digest.Sha256;
import dev.reelproof.pdf.Imprint;
import dev.reelproof.pdf.InclusionProofJson;
import dev.reelproof.pdf.SignedSamples;
import dev.reelproof.seal.CarriedProof;
import dev.reelproof.seal.InclusionProof;
import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.SealKey;
import dev.reelproof.seal.TreeHashing;
import dev.reelproof.seal.TreeHead;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;

/** The proof that a certificate's result is in the plant's log, checked with nothing at hand but the PDF. */
class LogStatementsTest {
    private static final SealKey KEY = SealKey.make();
    private static final Leaf EARLIER = new Leaf(LeafKind.RECORD, "north", "r", List.of("test_record 00"));

    private static String proof(String sha256) {
        Leaf leaf = Leaf.ofAttachment("north", sha256);
        TreeHead head = new TreeHead(
                "north", 2, TreeHashing.node(EARLIER.hash(), leaf.hash()), Instant.parse("2026-03-02T15:00:00Z"));
        return InclusionProofJson.write(
                new CarriedProof(new InclusionProof(leaf, 1, List.of(EARLIER.hash()), KEY.sign(head)), KEY.open()));
    }

    private static Statement check(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<Statement> statements =
                    LogStatements.of(document, Imprint.of(document).orElseThrow());
            assertEquals(1, statements.size());
            return statements.get(0);
        }
    }

    private static Statement carrying(String proof) throws Exception {
        return check(SignedSamples.unsigned(proof.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void aProofThatHoldsNamesPlantHeadAndKey() throws Exception {
        Statement statement = carrying(proof(SignedSamples.resultSha256()));
        assertEquals(Statement.Kind.FITS, statement.kind(), statement.words());
        assertTrue(statement.words().contains("entry 1 of the log of plant north"), statement.words());
        assertTrue(statement.words().contains("2026-03-02T15:00:00Z over 2 entries"), statement.words());
        assertTrue(statement.words().contains(KEY.open().id()), statement.words());
    }

    @Test
    void aProofOfAnotherResultObjects() throws Exception {
        Statement statement = carrying(proof(Sha256.hex("another result")));
        assertEquals(Statement.Kind.OBJECTS, statement.kind());
        assertTrue(statement.words().contains("not of the attached file"), statement.words());
    }

    @Test
    void aProofThatWasChangedObjects() throws Exception {
        String proof = proof(SignedSamples.resultSha256());
        assertEquals(
                Statement.Kind.OBJECTS,
                carrying(proof.replace("\"index\":1", "\"index\":0")).kind());
        assertEquals(
                Statement.Kind.OBJECTS,
                carrying(proof.replace("15:00:00Z", "14:00:00Z")).kind());
        Statement unreadable = carrying("{}");
        assertEquals(Statement.Kind.OBJECTS, unreadable.kind());
        assertTrue(unreadable.words().contains("cannot be read"), unreadable.words());
    }

    @Test
    void withoutAProofItIsSaid() throws Exception {
        Statement statement = check(SignedSamples.unsigned());
        assertEquals(Statement.Kind.FITS, statement.kind());
        assertTrue(statement.words().contains("carries no proof"), statement.words());
    }
}
