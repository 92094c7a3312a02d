package dev.reelproof.pdf.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.pdf.SignedSamples;
import dev.reelproof.pdf.signature.CannotSignException;
import dev.reelproof.pdf.signature.DemoKey;
import dev.reelproof.pdf.signature.KeyStores;
import dev.reelproof.pdf.signature.PdfSigner;
import dev.reelproof.pdf.signature.SigningKey;
import dev.reelproof.pdf.signature.TestKeys;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What somebody did to a certificate's PDF is named, with nothing at hand but the file. */
class PaperCheckTest {
    private static final Instant AT = Instant.parse("2026-03-02T15:20:00Z");

    private static TestKeys.Keyed authority;
    private static TestKeys.Keyed plant;
    private static byte[] genuine;

    @TempDir
    static Path folder;

    @BeforeAll
    static void sign() throws Exception {
        authority = TestKeys.authority();
        plant = TestKeys.plant(authority, "EC");
        genuine = signed(SignedSamples.unsigned(), plant);
    }

    private static byte[] signed(byte[] pdf, TestKeys.Keyed signer) throws Exception {
        SigningKey key =
                KeyStores.file(TestKeys.file(folder, authority, signer, "key"), TestKeys.PASSWORD, Optional.empty());
        return new PdfSigner(key, Optional.empty()).sign(pdf, AT);
    }

    private static PaperCheck check(byte[] pdf) throws Exception {
        return PaperCheck.of(pdf, List.of(authority.certificate()));
    }

    private static void finds(Conclusion conclusion, String words, PaperCheck check) {
        assertEquals(conclusion, check.conclusion(), check.toString());
        assertTrue(
                check.statements().stream()
                        .anyMatch(statement -> statement.words().contains(words)),
                check.toString());
    }

    private static long objections(PaperCheck check) {
        return check.statements().stream()
                .filter(statement -> statement.kind() == Statement.Kind.OBJECTS)
                .count();
    }

    /** Something that a person does to a document with a tool. */
    private interface Change {
        void to(PDDocument document) throws Exception;
    }

    /** The document saved anew, whole. */
    private static byte[] rewritten(byte[] pdf, Change change) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            change.to(document);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        }
    }

    /** The document with the change appended as a revision of its own. */
    private static byte[] appended(byte[] pdf, Change change) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            change.to(document);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.saveIncremental(out);
            return out.toByteArray();
        }
    }

    private static void exchangeResult(PDDocument document) throws Exception {
        Map<String, PDComplexFileSpecification> files =
                document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
        byte[] result = files.get("result.json").getEmbeddedFile().toByteArray();
        String better = new String(result, StandardCharsets.UTF_8).replaceFirst("\"margin\":[0-9.]+", "\"margin\":99");
        PDEmbeddedFile exchanged =
                new PDEmbeddedFile(document, new ByteArrayInputStream(better.getBytes(StandardCharsets.UTF_8)));
        for (PDComplexFileSpecification file : files.values()) {
            if (file.getFile().equals("result.json")) {
                file.setEmbeddedFile(exchanged);
                file.setEmbeddedFileUnicode(exchanged);
            }
            COSDictionary specification = file.getCOSObject();
            specification.setNeedToBeUpdated(true);
            specification.getCOSDictionary(org.apache.pdfbox.cos.COSName.EF).setNeedToBeUpdated(true);
        }
        exchanged.getCOSObject().setNeedToBeUpdated(true);
    }

    @Test
    void aGenuineOneOfThePlantIsSaidToBe() throws Exception {
        finds(Conclusion.GENUINE, "The signer is the one that was given", check(genuine));
        finds(
                Conclusion.GENUINE,
                "The signer is the one that was given",
                PaperCheck.of(genuine, List.of(plant.certificate())));
        PaperCheck check = check(genuine);
        finds(Conclusion.GENUINE, "Certificate NORTH-2026-000123, issue 1", check);
        finds(Conclusion.GENUINE, "Signed by CN=Invented Cable Works, at 2026-03-02T15:20:00Z", check);
        finds(Conclusion.GENUINE, "pages are there", check);
        finds(Conclusion.GENUINE, "The attached result is the one whose digest the page prints", check);
        assertEquals(0, Conclusion.GENUINE.exitCode());
    }

    @Test
    void withoutThePlantsCertificateTheSignerStaysOpen() throws Exception {
        finds(Conclusion.SIGNER_OPEN, "not known to be the plant", PaperCheck.of(genuine, List.of()));
        X509Certificate another = TestKeys.authority().certificate();
        finds(Conclusion.SIGNER_OPEN, "nothing given vouches", PaperCheck.of(genuine, List.of(another)));
    }

    @Test
    void theDemoKeyProvesNothingThoughItIsTrusted() throws Exception {
        SigningKey demo = DemoKey.in(folder);
        byte[] pdf = new PdfSigner(demo, Optional.empty()).sign(SignedSamples.unsigned(), AT);
        finds(Conclusion.SIGNER_OPEN, "demonstration", PaperCheck.of(pdf, List.of(demo.certificate())));
    }

    @Test
    void anyChangedByteIsFound() throws Exception {
        for (int at : new int[] {20_000, genuine.length / 2, genuine.length - 30}) {
            byte[] changed = genuine.clone();
            changed[at] ^= 1;
            try {
                assertEquals(Conclusion.NOT_AS_ISSUED, check(changed).conclusion(), "byte " + at);
            } catch (java.io.IOException e) {
                assertTrue(e.getMessage() != null, "no longer a PDF, which is said elsewhere");
            }
        }
        byte[] signed = genuine.clone();
        signed[SignedSamples.unsigned().length / 3] ^= 1;
        finds(Conclusion.NOT_AS_ISSUED, "changed after it was signed", check(signed));
    }

    @Test
    void aSecondRevisionIsNamed() throws Exception {
        byte[] revised = appended(genuine, document -> {
            document.getDocumentInformation().setTitle("Another title");
            document.getDocumentInformation().getCOSObject().setNeedToBeUpdated(true);
        });
        assertEquals(0, Arrays.mismatch(genuine, revised) + genuine.length * -1, "the first revision is whole");
        finds(
                Conclusion.NOT_AS_ISSUED,
                "a second revision of " + (revised.length - genuine.length) + " bytes",
                check(revised));
        finds(
                Conclusion.NOT_AS_ISSUED,
                "a second revision of 1 bytes",
                check(Arrays.copyOf(genuine, genuine.length + 1)));
    }

    @Test
    void aSignedOneIsNotSignedASecondTime() {
        assertThrows(CannotSignException.class, () -> signed(genuine, plant));
    }

    @Test
    void anExchangedAttachmentIsNamed() throws Exception {
        PaperCheck appended = check(appended(genuine, PaperCheckTest::exchangeResult));
        finds(Conclusion.NOT_AS_ISSUED, "The attached result is not the one", appended);
        finds(Conclusion.NOT_AS_ISSUED, "a second revision", appended);
        finds(
                Conclusion.NOT_AS_ISSUED,
                "The attached result is not the one",
                check(rewritten(genuine, PaperCheckTest::exchangeResult)));
    }

    @Test
    void anExchangedAttachmentIsNamedThoughItWasSignedAnew() throws Exception {
        byte[] forged = signed(rewritten(SignedSamples.unsigned(), PaperCheckTest::exchangeResult), plant);
        PaperCheck check = check(forged);
        finds(Conclusion.NOT_AS_ISSUED, "its digest differs", check);
        assertEquals(1, objections(check), check.toString());
    }

    @Test
    void aMissingAttachmentIsNamed() throws Exception {
        byte[] without =
                rewritten(genuine, document -> document.getDocumentCatalog().setNames(null));
        finds(Conclusion.NOT_AS_ISSUED, "The attached result is missing", check(without));
    }

    @Test
    void aRemovedPageIsNamed() throws Exception {
        PaperCheck whole = check(rewritten(genuine, document -> document.removePage(1)));
        finds(Conclusion.NOT_AS_ISSUED, "pages were removed", whole);
        PaperCheck revision = check(appended(genuine, document -> {
            document.removePage(1);
            document.getPages().getCOSObject().setNeedToBeUpdated(true);
            document.getPages()
                    .getCOSObject()
                    .getCOSArray(org.apache.pdfbox.cos.COSName.KIDS)
                    .setNeedToBeUpdated(true);
        }));
        finds(Conclusion.NOT_AS_ISSUED, "pages were removed", revision);
        finds(Conclusion.NOT_AS_ISSUED, "a second revision", revision);
        PaperCheck anew = check(signed(rewritten(SignedSamples.unsigned(), document -> document.removePage(1)), plant));
        finds(Conclusion.NOT_AS_ISSUED, "pages were removed", anew);
        assertEquals(1, objections(anew), anew.toString());
    }

    @Test
    void anUnsignedOneAndAStrangersAreNotOurs() throws Exception {
        finds(Conclusion.NOT_AS_ISSUED, "It carries no signature", check(SignedSamples.unsigned()));
        byte[] stranger = rewritten(SignedSamples.unsigned(), document -> document.getDocumentInformation()
                .setCustomMetadataValue("CertificateNumber", null));
        finds(Conclusion.NOT_AS_ISSUED, "does not say which certificate it is", check(stranger));
    }

    @Test
    void anotherNumberThanThePagesPrintIsNamed() throws Exception {
        byte[] renumbered = rewritten(SignedSamples.unsigned(), document -> document.getDocumentInformation()
                .setCustomMetadataValue("CertificateNumber", "NORTH-2026-000124"));
        finds(Conclusion.NOT_AS_ISSUED, "do not print the number", check(signed(renumbered, plant)));
    }
}
