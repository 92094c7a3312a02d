package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.certificate.CertificateType;
import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.certificate.Declaration;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.Issuing;
import dev.reelproof.pdf.file.StatedNumber;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A collective certificate as paper: a statement that is true of all its reels, a summary, and a page a reel. */
class CollectivePdfTest {
    private static final String ORDER = "SO-4711, line 3";
    private static final CertificateSamples SAMPLES = CertificateSamples.of(4, 40);
    private static final Provenance PROVENANCE =
            new Provenance(Optional.of(SignedSamples.SERVICE), Optional.empty(), Provenance.Signing.PLANT);

    private static Declaration declaration(String language) {
        return new Declaration(
                CertificateType.INSPECTION_CERTIFICATE_3_1,
                Locale.forLanguageTag(language),
                Declaration.Sheet.A4,
                Declaration.UnitSystem.BOTH,
                new Declaration.Signatory("A. Example", "quality manager"),
                false);
    }

    private static List<CertificateContent> reels(String language, int count) {
        List<CertificateContent> reels = new ArrayList<>();
        for (int i = 1; i <= count; i++) {
            reels.add(SAMPLES.content(declaration(language), i, "R-2026-%05d".formatted(i)));
        }
        return reels;
    }

    private static CollectiveContent content(List<CertificateContent> reels) {
        Issuing issuing = CertificateSamples.issuing();
        return CollectiveContent.of(
                new Issuing(CertificateNumber.of("north", 2026, 999), 1, issuing.issued(), issuing.plant()),
                new Declaration.Signatory("A. Example", "quality manager"),
                ORDER,
                "Example Networks (invented customer)",
                reels.stream()
                        .map(reel -> new IssuedCertificate(
                                "north",
                                reel.number(),
                                1,
                                UUID.randomUUID(),
                                reel.reel(),
                                issuing.issued(),
                                reel.order(),
                                reel.customer(),
                                "0".repeat(64),
                                null))
                        .toList(),
                reels);
    }

    private static byte[] pdf(String language, int count) {
        List<CertificateContent> reels = reels(language, count);
        CollectiveContent content = content(reels);
        try (CollectiveDraft draft = CollectiveDraft.of(content, reels, PROVENANCE, Optional.empty())) {
            return draft.finish(content);
        }
    }

    private static List<String> pages(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replaceAll("\\s+", " "));
            }
            return pages;
        }
    }

    private static void write(byte[] pdf, String name) throws IOException {
        String kept = System.getProperty("reelproof.look");
        if (kept != null) {
            Files.write(Path.of(kept, name), pdf);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de", "es", "fr"})
    void isArchivableAndAccessibleInEachLanguageAndHasAPageAReel(String language) throws Exception {
        byte[] pdf = pdf(language, 3);
        write(pdf, "collective-" + language + ".pdf");
        CertificatePdfTest.requireCompliant(pdf);
        List<String> pages = pages(pdf);
        assertEquals(4, pages.size(), pages.toString());
        for (int reel = 1; reel <= 3; reel++) {
            String number = "NORTH-2026-00000" + reel;
            assertTrue(pages.get(0).contains("R-2026-0000" + reel), pages.get(0));
            assertTrue(pages.get(0).contains(number + " / 1"), pages.get(0));
            assertTrue(pages.get(reel).contains("R-2026-0000" + reel), pages.get(reel));
            assertTrue(pages.get(reel).contains(number), pages.get(reel));
            for (CertificateContent.Row row :
                    reels(language, reel).get(reel - 1).rows()) {
                assertTrue(pages.get(reel).contains(row.value()), row.requirement());
            }
        }
        assertTrue(String.join("", pages).contains("NORTH-2026-000999"));
        assertFalse(String.join("", pages).contains("{"), pages.toString());
    }

    @Test
    void saysWhatItRestsOnWhoAuthorisesItAndWhereItIsVerified() throws Exception {
        String first = pages(pdf("en", 3)).get(0);
        for (String expected : List.of(
                "Collective certificate",
                "Inspection certificate 3.1",
                "NORTH-2026-000999",
                "3 reels of order SO-4711, line 3",
                "Each of the 3 reels listed below has a certificate of its own",
                "This certificate judges nothing anew",
                "when one of them is in question, superseded or withdrawn, so is this one",
                "Authorised for the plant by A. Example, quality manager",
                "/verify.html?number=NORTH-2026-000999",
                "Example Networks (invented customer)",
                "914.4 m")) {
            assertTrue(first.contains(expected), () -> "missing: " + expected + " in " + first);
        }
    }

    @Test
    void theLeastMarginIsThatOfTheTable() {
        CertificateContent reel = reels("en", 1).get(0);
        double least = reel.rows().stream()
                .filter(row -> row.unit().equals("dB"))
                .mapToDouble(row -> Double.parseDouble(row.margin().replace('\u2212', '-')))
                .min()
                .orElseThrow();
        CollectiveContent.Least printed = content(List.of(reel)).lines().get(0).least();
        assertEquals(least, Double.parseDouble(printed.margin().replace('\u2212', '-')));
    }

    @Test
    void aLongSummaryRunsOnUnderItsHeadings() throws Exception {
        byte[] pdf = pdf("en", 60);
        write(pdf, "collective-60.pdf");
        List<String> pages = pages(pdf);
        int reelPages = (int) pages.stream()
                .filter(page -> page.contains("Statement of conformity ACCEPTED"))
                .count();
        assertEquals(60, reelPages);
        assertTrue(pages.size() - reelPages >= 2, "pages: " + pages.size());
        assertTrue(pages.get(1).contains("Certificate"), pages.get(1));
        CertificatePdfTest.requireCompliant(pdf);
    }

    @Test
    void theSameContentGivesTheSameBytesAndTheFileStatesItsNumber() {
        byte[] pdf = pdf("en", 2);
        assertArrayEquals(pdf, pdf("en", 2));
        assertEquals(Optional.of(CertificateNumber.of("north", 2026, 999)), StatedNumber.in(pdf));
    }

    @Test
    void isDrawnOnlyOfWhatItNamesAndBecomesOneCertificate() {
        List<CertificateContent> reels = reels("en", 2);
        CollectiveContent content = content(reels);
        assertThrows(
                IllegalArgumentException.class,
                () -> CollectiveDraft.of(content, reels.subList(0, 1), PROVENANCE, Optional.empty()));
        try (CollectiveDraft draft = CollectiveDraft.of(content, reels, PROVENANCE, Optional.empty())) {
            CollectiveContent other = content(reels.subList(0, 1));
            assertThrows(IllegalArgumentException.class, () -> draft.finish(other));
            draft.finish(content);
            assertThrows(IllegalStateException.class, () -> draft.finish(content));
        }
    }

    @Test
    void namesEachReelOnceAndAtLeastOne() {
        List<CertificateContent> reels = reels("en", 1);
        assertThrows(IllegalArgumentException.class, () -> content(List.of()));
        assertThrows(IllegalArgumentException.class, () -> {
            CertificateContent again =
                    SAMPLES.content(declaration("en"), 7, reels.get(0).reel());
            content(List.of(reels.get(0), again));
        });
    }
}
