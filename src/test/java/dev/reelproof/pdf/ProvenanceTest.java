package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import dev.reelproof.digest.Sha256;
import java.awt.image.BufferedImage;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** What a certificate gives its reader to check it by: a code that reads, a result that fits its schema, a digest that is printed. */
class ProvenanceTest {
    /** What an office printer makes of it at its coarsest, in dots an inch. */
    private static final int PRINTER = 300;

    private static final String PAGE = "https://reelproof.example/verify.html?number=NORTH-2026-000123";

    private static String text(byte[] pdf, int page) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            return stripper.getText(document);
        }
    }

    @Test
    void theCodeOnThePrintedPageLeadsToTheAddressBesideIt() throws Exception {
        byte[] pdf = SignedSamples.unsigned();
        assertTrue(text(pdf, 1).contains(PAGE), text(pdf, 1));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            BufferedImage page = new PDFRenderer(document).renderImageWithDPI(0, PRINTER);
            int[] pixels = page.getRGB(0, 0, page.getWidth(), page.getHeight(), null, 0, page.getWidth());
            BinaryBitmap bitmap = new BinaryBitmap(
                    new HybridBinarizer(new RGBLuminanceSource(page.getWidth(), page.getHeight(), pixels)));
            assertEquals(PAGE, new QRCodeReader().decode(bitmap).getText());
        }
    }

    @Test
    void withoutAServiceThereIsNoCode() throws Exception {
        byte[] pdf = SignedSamples.unsigned(
                new Provenance(Optional.empty(), Optional.of(SignedSamples.result()), Provenance.Signing.PLANT));
        assertFalse(text(pdf, 1).contains("genuine and current"), text(pdf, 1));
        assertTrue(text(pdf, 1).contains(SignedSamples.result().sha256()));
    }

    @Test
    void aDemonstrationKeyIsSaidOnTheFirstPage() throws Exception {
        assertTrue(text(
                        SignedSamples.unsigned(
                                new Provenance(Optional.empty(), Optional.empty(), Provenance.Signing.DEMO)),
                        1)
                .contains("Signed with a demonstration key"));
        assertFalse(text(SignedSamples.unsigned(), 1).contains("demonstration"));
    }

    @Test
    void theResultIsAttachedAsDataBesideItsSchemaAndItsDigestIsPrinted() throws Exception {
        byte[] pdf = SignedSamples.unsigned();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Map<String, PDComplexFileSpecification> files =
                    document.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
            PDComplexFileSpecification result = files.get("result.json");
            PDComplexFileSpecification schema = files.get("certified-result.schema.json");
            assertEquals("Data", result.getCOSObject().getNameAsString(COSName.AF_RELATIONSHIP));
            assertEquals("Supplement", schema.getCOSObject().getNameAsString(COSName.AF_RELATIONSHIP));
            assertEquals("application/json", result.getEmbeddedFile().getSubtype());
            assertEquals(
                    2,
                    document.getDocumentCatalog()
                            .getCOSObject()
                            .getCOSArray(COSName.AF)
                            .size());
            byte[] json = result.getEmbeddedFile().toByteArray();
            assertTrue(text(pdf, 1).contains(Sha256.hex(json)));
            Imprint imprint = Imprint.of(document).orElseThrow();
            assertEquals(Optional.of(Sha256.hex(json)), imprint.resultSha256());
            assertEquals(document.getNumberOfPages(), imprint.pages());
            ObjectMapper mapper = new ObjectMapper();
            JsonNode tree = mapper.readTree(json);
            assertEquals(
                    java.util.Set.of(),
                    JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                            .getSchema(mapper.readTree(schema.getEmbeddedFile().toByteArray()))
                            .validate(tree));
            assertEquals("R-2026-00417", tree.get("reel").asText());
            assertEquals(
                    SignedSamples.judgement().sweeps().size(),
                    tree.get("sweeps").size());
            assertEquals(1, tree.get("gridsMegahertz").size());
            JsonNode sweep = tree.get("sweeps").get(0);
            assertEquals(
                    SignedSamples.judgement().sweeps().get(0).corrected(7),
                    sweep.get("corrected").get(7).asDouble(),
                    1e-6 * SignedSamples.judgement().sweeps().get(0).corrected(7));
        }
    }

    @Test
    void theSameRecordGivesTheSameBytes() {
        assertEquals(SignedSamples.result().sha256(), SignedSamples.result().sha256());
        assertArrayEquals(SignedSamples.unsigned(), SignedSamples.unsigned());
    }
}
