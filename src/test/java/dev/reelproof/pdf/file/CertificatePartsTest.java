package dev.reelproof.pdf.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.certificate.life.FileParts;
import dev.reelproof.pdf.CertificatePdf;
import dev.reelproof.pdf.SignedSamples;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.junit.jupiter.api.Test;

/** Number and parts are read from the file itself, and no file can cost more than there is room for. */
class CertificatePartsTest {
    private static final CertificateContent CONTENT =
            CertificateSamples.of(4, 50).content();
    private static final byte[] ISSUED = CertificatePdf.render(CONTENT);

    private static byte[] saved(PDDocument document) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        document.save(out);
        return out.toByteArray();
    }

    @Test
    void readsTheNumberThatTheFileStates() {
        assertEquals(
                CONTENT.number(),
                StatedNumber.in(ISSUED).map(CertificateNumber::toString).orElseThrow());
        assertEquals(Optional.empty(), StatedNumber.in("%PDF-1.7 NORTH-2026-000001".getBytes(StandardCharsets.UTF_8)));
        assertEquals(
                Optional.empty(),
                StatedNumber.in("<dc:title>NORTH-1026-000001 NORTH-2026-0000001".getBytes(StandardCharsets.UTF_8)));
        assertEquals(Optional.empty(), StatedNumber.in(new byte[0]));
    }

    @Test
    void seesThatAPageWasRemovedAndThatOneWasExchanged() throws IOException {
        FileParts issued = CertificateParts.of(ISSUED).orElseThrow();
        assertTrue(issued.pages().size() > 1, "the sample has plots on a page of their own");
        try (PDDocument document = Loader.loadPDF(ISSUED)) {
            document.removePage(document.getNumberOfPages() - 1);
            byte[] shortened = saved(document);
            FileParts found = CertificateParts.of(shortened).orElseThrow();
            assertEquals(issued.pages().subList(0, issued.pages().size() - 1), found.pages());
            assertEquals(
                    CONTENT.number(), StatedNumber.in(shortened).orElseThrow().toString());
        }
        try (PDDocument document = Loader.loadPDF(ISSUED)) {
            PDStream other = new PDStream(document);
            try (OutputStream out = other.createOutputStream(COSName.FLATE_DECODE)) {
                out.write("0 0 m 9 9 l S".getBytes(StandardCharsets.US_ASCII));
            }
            document.getPage(0).setContents(other);
            FileParts found = CertificateParts.of(saved(document)).orElseThrow();
            assertNotEquals(issued.pages().get(0), found.pages().get(0));
            assertEquals(issued.pages().get(1), found.pages().get(1));
        }
    }

    @Test
    void seesWhatIsAttachedThoughItsMediaTypeIsWrittenWithAnEscape() {
        FileParts issued = CertificateParts.of(SignedSamples.unsigned()).orElseThrow();
        assertEquals(
                Set.of("certified-result.schema.json", "result.json"),
                issued.attachments().keySet());
    }

    @Test
    void aFileThatUnpacksToMoreThanThereIsRoomForIsNotOpened() throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            PDStream bomb = new PDStream(document);
            try (OutputStream out = bomb.createOutputStream(COSName.FLATE_DECODE)) {
                byte[] zeros = new byte[1 << 20];
                for (int i = 0; i < 80; i++) {
                    out.write(zeros);
                }
            }
            page.setContents(bomb);
            byte[] file = saved(document);
            assertTrue(file.length < 1 << 20, "it is small: " + file.length);
            assertEquals(Optional.empty(), CertificateParts.of(file));
        }
    }

    @Test
    void otherPackingsAreNotOpened() {
        assertTrue(PackedStreams.fit(ISSUED, 64L << 20), "a certificate is packed by Flate alone");
        for (String filter : new String[] {
            "/Filter /LZWDecode",
            "/Filter 5 0 R",
            "/Filter [/ASCII85Decode /FlateDecode]",
            "/Filter /Fl#61teDecode",
            "/F (elsewhere)",
            "/Subtype /a#2Fb /Fl#61te 5",
            "/Subtype /a#2Fb#61"
        }) {
            assertFalse(
                    PackedStreams.fit(
                            ("1 0 obj << " + filter + " >> stream\nx endstream").getBytes(StandardCharsets.ISO_8859_1),
                            100),
                    filter);
        }
    }

    @Test
    void whatIsPackedWithoutSayingSoCountsToo() throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.write("1 0 obj << >> stream\n".getBytes(StandardCharsets.ISO_8859_1));
        try (DeflaterOutputStream packed = new DeflaterOutputStream(file)) {
            packed.write(new byte[10_000]);
        }
        assertFalse(PackedStreams.fit(file.toByteArray(), 9_999));
        assertTrue(PackedStreams.fit(file.toByteArray(), 10_000));
    }

    @Test
    void whatIsNoPdfHasNoParts() {
        assertEquals(Optional.empty(), CertificateParts.of("no PDF".getBytes(StandardCharsets.UTF_8)));
        assertEquals(Optional.empty(), CertificateParts.of(new byte[0]));
        byte[] cut = java.util.Arrays.copyOf(ISSUED, ISSUED.length / 3);
        CertificateParts.of(cut);
    }
}
