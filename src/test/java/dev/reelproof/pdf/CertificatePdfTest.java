package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.file.LimitSetReader;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

class CertificatePdfTest {
    private static final String NUMBER = "NORTH-2026-000123";
    private static final String END = "End of certificate " + NUMBER;

    private static CertificateContent content;
    private static byte[] pdf;

    @BeforeAll
    static void render() {
        content = CertificateSamples.of(4, 500).content();
        pdf = CertificatePdf.render(content);
    }

    /** The text of each page with white space evened out, since a cell may break anywhere. */
    private static List<String> pages(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<String> pages = new ArrayList<>();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(false);
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replaceAll("\\s+", " "));
            }
            return pages;
        }
    }

    /** By the independent validator: archivable with the structure of its text, and accessible as far as a machine can tell. */
    static void requireCompliant(byte[] pdf) throws Exception {
        for (PDFAFlavour flavour : List.of(PDFAFlavour.PDFA_3_B, PDFAFlavour.PDFA_3_A, PDFAFlavour.PDFUA_1)) {
            ValidationResult result = validate(pdf, flavour);
            assertTrue(
                    result.isCompliant(),
                    () -> flavour + ": " + result.getFailedChecks().toString());
            assertTrue(result.getTotalAssertions() > 300, flavour + ", assertions: " + result.getTotalAssertions());
        }
    }

    private static ValidationResult validate(byte[] pdf, PDFAFlavour flavour) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            return validator.validate(parser);
        }
    }

    @Test
    void theFirstPageNamesNumberReelPartiesConditionsStatementAndWhoAuthorises() throws Exception {
        String first = pages(pdf).get(0);
        for (String expected : List.of(
                "Test certificate",
                NUMBER,
                "R-2026-00417",
                "Northfield Cable Works (demo plant)",
                "1 Example Street",
                "Example Networks (invented customer)",
                "SO-4711, line 3",
                "HD6A-4P",
                "1000 ft (304.8 m)",
                "87.8 °F (31 °C)",
                "2026-03-02 14:05 to 14:09 UTC",
                "Four-pair horizontal cable, category 6A, revision 1, effective 2026-01-01",
                "na-07, calibrated until 2026-12-31",
                "Statement of conformity ACCEPTED",
                content.statement().get(0),
                "Tested by T. Example",
                "Authorised for the plant",
                "Results")) {
            assertTrue(first.contains(expected), () -> "missing: " + expected + " in " + first);
        }
        assertFalse(first.contains("{") || first.contains("["), first);
    }

    @Test
    void theTableNamesEachRequirementWithItsWholeLimitAndTheNotesWhatTheyRestOn() throws Exception {
        String all = String.join(" ", pages(pdf));
        for (Row row : content.rows()) {
            for (String cell : List.of(row.title(), row.plain(), row.limit(), row.value(), row.margin(), row.where())) {
                assertTrue(all.contains(cell), () -> "missing: " + cell + " of " + row.requirement() + " in " + all);
            }
        }
        for (String expected : List.of(
                "relates only to the reel named above",
                content.record(),
                content.sourceSha256(),
                content.limits().sha256())) {
            assertTrue(all.contains(expected), () -> "missing: " + expected + " in " + all);
        }
    }

    @Test
    void plotsFollowOnTheLaterPages() throws Exception {
        List<String> pages = pages(pdf);
        assertEquals(2, pages.size());
        for (String title : List.of(
                "Insertion loss",
                "NEXT",
                "PS NEXT",
                "ACR-F",
                "PS ACR-F",
                "Return loss",
                "Propagation delay",
                "Delay skew")) {
            assertTrue(pages.get(1).contains(title), title);
        }
        assertTrue(pages.get(1).contains("all 24 sweeps"));
    }

    @Test
    void everyPageCarriesTheNumberAndItsPlaceAndOnlyTheLastTheEnd() throws Exception {
        List<String> pages = pages(pdf);
        for (int i = 0; i < pages.size(); i++) {
            assertTrue(pages.get(i).contains(NUMBER), "page " + (i + 1));
            assertTrue(pages.get(i).contains("page " + (i + 1) + " of " + pages.size()), "page " + (i + 1));
            assertEquals(i == pages.size() - 1, pages.get(i).contains(END), "page " + (i + 1));
        }
    }

    @Test
    void theSameContentGivesTheSameBytesAndAnotherDoesNot() {
        assertArrayEquals(
                pdf, CertificatePdf.render(CertificateSamples.of(4, 500).content()));
        assertFalse(Arrays.equals(pdf, CertificatePdf.render(withCustomer("Another (invented)"))));
    }

    private static CertificateContent standIn() {
        return content.numbered(
                CertificateNumber.parse("NORTH-2025-000001"), 7, OffsetDateTime.parse("2025-01-01T00:00:00Z"));
    }

    @Test
    void aDraftBecomesTheCertificateAsIfItHadBeenDrawnAtOnce() throws Exception {
        try (CertificateDraft draft = CertificatePdf.draft(standIn())) {
            byte[] finished = draft.finish(content);
            assertArrayEquals(pdf, finished);
            assertFalse(String.join(" ", pages(finished)).contains("2025"), "what stood in was drawn");
        }
    }

    @Test
    void aDraftBecomesNoOtherCertificate() {
        try (CertificateDraft draft = CertificatePdf.draft(standIn())) {
            assertThrows(IllegalArgumentException.class, () -> draft.finish(withCustomer("Another (invented)")));
        }
    }

    @Test
    void aDraftBecomesOneCertificate() {
        try (CertificateDraft draft = CertificatePdf.draft(standIn())) {
            draft.finish(content);
            assertThrows(IllegalStateException.class, () -> draft.finish(content));
        }
    }

    @Test
    void everyFontIsEmbedded() throws Exception {
        int fonts = 0;
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    assertTrue(page.getResources().getFont(name).isEmbedded(), name.getName());
                    fonts++;
                }
            }
        }
        assertTrue(fonts >= 4, "two weights on two pages: " + fonts);
    }

    @Test
    void isPdfA3b() throws Exception {
        requireCompliant(pdf);
    }

    @Test
    void aReelOfFewRequirementsWithoutSweepsTakesOnePage() throws Exception {
        List<String> pages =
                pages(CertificatePdf.render(with(content.rows().subList(0, 7), List.of(), content.customer())));
        assertEquals(1, pages.size());
        assertTrue(pages.get(0).contains(END));
    }

    @Test
    void nothingIsSetSmallerThanSevenPoints() throws Exception {
        List<Row> many = numbered(60);
        for (byte[] one : List.of(pdf, CertificatePdf.render(with(many, content.plots(), content.customer())))) {
            try (PDDocument document = Loader.loadPDF(one)) {
                List<Float> sizes = new ArrayList<>();
                new PDFTextStripper() {
                    @Override
                    protected void processTextPosition(TextPosition text) {
                        sizes.add(text.getFontSizeInPt());
                    }
                }.getText(document);
                assertTrue(Collections.min(sizes) >= 7, "smallest: " + Collections.min(sizes));
            }
        }
    }

    /** What a screen reader finds: one title, headings below it, tables with heads, figures in words, and the language. */
    @Test
    void theDocumentHasAStructure() throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals("en", document.getDocumentCatalog().getLanguage());
            assertTrue(document.getDocumentCatalog().getMarkInfo().isMarked());
            List<String> types = new ArrayList<>();
            List<String> alternatives = new ArrayList<>();
            walk(
                    (PDStructureElement) document.getDocumentCatalog()
                            .getStructureTreeRoot()
                            .getKids()
                            .get(0),
                    types,
                    alternatives);
            assertEquals(1, Collections.frequency(types, "H1"));
            assertEquals(4, Collections.frequency(types, "H2"));
            assertEquals(1, Collections.frequency(types, "Table"));
            assertEquals(content.rows().size() + 1, Collections.frequency(types, "TR"));
            assertEquals(content.plots().size(), Collections.frequency(types, "Figure"));
            assertEquals(content.plots().size(), alternatives.size());
            assertTrue(alternatives.get(0).startsWith("Insertion loss over frequency"), alternatives.get(0));
        }
    }

    private static void walk(PDStructureElement element, List<String> types, List<String> alternatives) {
        types.add(element.getStructureType());
        if (element.getAlternateDescription() != null) {
            alternatives.add(element.getAlternateDescription());
        }
        for (Object kid : element.getKids()) {
            if (kid instanceof PDStructureElement below) {
                walk(below, types, alternatives);
            }
        }
    }

    @Test
    void aTwentyFivePairReelKeepsToThreePagesWithBands() throws Exception {
        List<String> pages =
                pages(CertificatePdf.render(CertificateSamples.of(25, 60).content()));
        assertEquals(3, pages.size());
        assertTrue(pages.get(1).contains("all 600 sweeps"), pages.get(1));
    }

    @ParameterizedTest
    @CsvSource({
        "category-3-cable, 4, 3",
        "category-3-25-pair-cable, 25, 3",
        "category-5e-25-pair-cable, 25, 3",
        "category-5e-cable, 4, 3",
        "category-6-cable, 4, 3",
        "category-6a-cable, 4, 3",
        "category-6a-cable-revision-2, 4, 3",
        "category-8-cable, 4, 3",
        "iec-category-6a-cable, 4, 3",
        "iec-category-6a-cable-revision-2, 4, 3",
        "iec-category-7-cable, 4, 3",
        "us-buried-wire-22awg, 2, 3",
        "us-buried-wire-24awg, 6, 3",
        "us-buried-wire-24awg-revision-2, 3, 4",
        "us-buried-wire-24awg-revision-3, 3, 4",
        "us-filled-cable-19awg, 25, 3",
        "us-filled-t1c-cable-24awg, 1800, 3",
        "us-filled-t1c-cable-24awg-revision-2, 1800, 3",
        "us-terminating-cable-22awg, 25, 3",
        "us-terminating-cable-22awg-revision-2, 25, 5",
        "us-terminating-cable-22awg-revision-3, 25, 5",
        "us-terminating-cable-24awg, 800, 3",
        "us-terminating-cable-24awg-revision-2, 800, 5",
        "us-terminating-cable-24awg-revision-3, 800, 5"
    })
    void everyShippedLimitSetFitsACertificate(String id, int pairs, int mostPages) throws Exception {
        LimitSet set;
        try (InputStream file = getClass().getResourceAsStream("/limits/" + id + ".yaml")) {
            set = new LimitSetReader((law, parameters) -> {})
                    .read(id + ".yaml", new String(file.readAllBytes(), StandardCharsets.UTF_8));
        }
        CertificateContent whole = CertificateSamples.meetingAll(set, pairs);
        List<String> pages = pages(CertificatePdf.render(whole));
        assertTrue(pages.size() <= mostPages, "pages: " + pages.size());
        String all = String.join(" ", pages);
        for (Row row : whole.rows()) {
            for (String text : List.of(row.title(), row.plain(), row.limit(), row.value())) {
                assertTrue(all.contains(text), () -> "missing: " + text + " of " + row.requirement() + " in " + all);
            }
            row.notes().forEach(note -> assertTrue(all.contains(note), () -> "missing: " + note + " in " + all));
        }
        assertEquals(
                whole.rows().size(),
                whole.rows().stream()
                        .map(row -> row.title() + row.notes())
                        .distinct()
                        .count(),
                "rows that a reader can tell apart");
        assertFalse(all.contains("Caution"), "a word of caution speaks to the bench, not to the customer");
    }

    @Test
    void aLongTableIsSetTighterAndLeavesNothingOut() throws Exception {
        List<Row> many = numbered(45);
        List<String> pages = pages(CertificatePdf.render(with(many, content.plots(), content.customer())));
        assertTrue(pages.size() <= 4, "pages: " + pages.size());
        String all = String.join(" ", pages);
        many.forEach(row -> assertTrue(all.contains(row.title()), row.title()));
    }

    @Test
    void aTableBeyondThreePagesGetsMoreAndLeavesNothingOut() throws Exception {
        List<Row> many = numbered(200);
        List<String> pages = pages(CertificatePdf.render(with(many, content.plots(), content.customer())));
        String all = String.join(" ", pages);
        many.forEach(row -> assertTrue(all.contains(row.title()), row.title()));
        assertTrue(pages.get(pages.size() - 1).contains(END));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "漢字 株式会社 \uD83D\uDE80",
                "abc\u0000\u0007\u001b[31m\r\n\tdef",
                "שלום עולם مرحبا",
                "\u202Egnp.exe\u200B\uFEFF\uE000",
                "\uD800 half a letter",
                "e\u0301 a\u0308\u0323 \u0301",
                "</x:xmpmeta><script>&amp;\"'",
                ""
            })
    void hostileTextNeitherBreaksTheDrawingNorTheArchive(String hostile) throws Exception {
        byte[] drawn = CertificatePdf.render(withTextsOf(hostile));
        assertTrue(pages(drawn).get(0).contains(NUMBER));
        requireCompliant(drawn);
    }

    @Test
    void lettersThatTheTypefaceLacksAreSeenToBeMissing() throws Exception {
        String first =
                pages(CertificatePdf.render(withCustomer("Werk 漢字 Süd Ω µ √"))).get(0);
        assertTrue(first.contains("Werk ■■ Süd Ω µ √"), first);
    }

    @Test
    void aCustomerOfTwoHundredLettersIsThereInFull() throws Exception {
        String words = String.join(" ", Collections.nCopies(20, "Invented")) + " and Daughters Ltd.";
        assertTrue(words.length() >= 190, "length " + words.length());
        assertTrue(pages(CertificatePdf.render(withCustomer(words))).get(0).contains(words));
        String oneWord = "W".repeat(200);
        String first =
                pages(CertificatePdf.render(withCustomer(oneWord))).get(0).replace(" ", "");
        assertTrue(first.contains(oneWord), first);
    }

    @Test
    void aConditionalPassIsNamedAndTheFileStaysAnArchive() throws Exception {
        CertificateContent nearlyMissed = CertificateSamples.conditional();
        Row row = nearlyMissed.rows().get(0);
        byte[] conditional = CertificatePdf.render(nearlyMissed);
        String first = pages(conditional).get(0);
        for (String expected : List.of(
                "ACCEPTED, CONDITIONALLY",
                "Conditional pass, met by less than the guard band of the decision rule below: " + row.title() + ".",
                "conditional pass",
                "probability of conformity 93.9 %")) {
            assertTrue(first.contains(expected), () -> "missing: " + expected + " in " + first);
        }
        assertFalse(pages(pdf).get(0).contains("CONDITIONALLY"));
        requireCompliant(conditional);
    }

    private static List<Row> numbered(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> {
                    Row row = content.rows().get(i % content.rows().size());
                    return new Row(
                            row.requirement() + i,
                            row.property(),
                            "No. " + i + ".",
                            row.plain(),
                            row.limit(),
                            row.limitParts(),
                            row.value(),
                            row.limitThere(),
                            row.margin(),
                            row.unit(),
                            row.where(),
                            row.points(),
                            row.outcome(),
                            row.notes());
                })
                .toList();
    }

    private static CertificateContent withCustomer(String customer) {
        return with(content.rows(), content.plots(), customer);
    }

    private static CertificateContent with(List<Row> rows, List<CertificateContent.Plot> plots, String customer) {
        return new CertificateContent(
                content.number(),
                content.issue(),
                content.issued(),
                content.plant(),
                content.product(),
                content.reel(),
                content.length(),
                content.lengthMetres(),
                content.lengthMarks(),
                customer,
                content.order(),
                content.consignee(),
                content.limits(),
                content.record(),
                content.sourceSha256(),
                content.engine(),
                content.conditions(),
                content.verdict(),
                content.decisionRule(),
                rows,
                content.leftOut(),
                plots,
                content.uncertainty(),
                content.paper(),
                content.statement(),
                content.distributions(),
                content.concessions());
    }

    /** Each text that a person can enter replaced. */
    private static CertificateContent withTextsOf(String text) {
        CertificateContent.Conditions conditions = content.conditions();
        return new CertificateContent(
                content.number(),
                content.issue(),
                content.issued(),
                new dev.reelproof.certificate.Plant("Plant " + text, List.of(text, text)),
                new CertificateContent.Cable(text, text, text, 4),
                text,
                content.length(),
                content.lengthMetres(),
                content.lengthMarks(),
                text,
                text,
                text,
                content.limits(),
                content.record(),
                content.sourceSha256(),
                content.engine(),
                new CertificateContent.Conditions(
                        conditions.temperature(),
                        conditions.celsius(),
                        conditions.started(),
                        conditions.finished(),
                        text,
                        text,
                        List.of(new CertificateContent.Instrument(text, null))),
                content.verdict(),
                content.decisionRule(),
                content.rows(),
                List.of(text),
                content.plots(),
                content.uncertainty(),
                content.paper(),
                List.of(text),
                content.distributions(),
                List.of(new CertificateContent.Conceded(
                        1,
                        "use-as-is",
                        List.of(text),
                        text,
                        new CertificateContent.Signer(text, text, "2026-03-02"),
                        new CertificateContent.Signer(text, text, "2026-03-02"),
                        text,
                        text)));
    }
}
