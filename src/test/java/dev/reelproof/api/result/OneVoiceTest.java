package dev.reelproof.api.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.certificate.TestConditions;
import dev.reelproof.correction.Laws;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.file.LimitFiles;
import dev.reelproof.pdf.CertificatePdf;
import dev.reelproof.quantity.Temperature;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.Findings;
import dev.reelproof.wording.Wording;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The same finding in the JSON answer, which the page prints as it is, on the certificate and in the text of its PDF: the same words and
 * figures.
 */
class OneVoiceTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int PAIRS = 25;

    private static LimitSet set;
    private static CertificateContent content;
    private static String paper;

    static List<Findings.Case> passing() {
        return Findings.passing().toList();
    }

    @BeforeAll
    static void issue() throws Exception {
        set = CertificateSamples.limitSetOf(
                passing().stream().map(Findings.Case::requirement).toList());
        Judgement judgement = CertificateSamples.judgementOf(
                set, passing().stream().map(Findings.Case::finding).toList());
        content = CertificateSamples.contentOf(set, judgement, PAIRS);
        try (PDDocument document = Loader.loadPDF(CertificatePdf.render(content))) {
            paper = oneLine(new PDFTextStripper().getText(document));
        }
    }

    /** Cells wrap on paper, so that what was a space may be the end of a line. */
    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static JsonNode answer(Findings.Case one) {
        return JSON.valueToTree(
                FindingAnswer.of(one.finding(), set, CertificateSamples.product(PAIRS), Wording.english()));
    }

    private static Row row(List<Row> rows, String requirement) {
        return rows.stream()
                .filter(row -> row.requirement().equals(requirement))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @MethodSource("passing")
    void answerAndCertificateSayTheSame(Findings.Case one) {
        assertSame(answer(one), row(content.rows(), one.requirement().id()));
    }

    private static void assertSame(JsonNode answer, Row row) {
        JsonNode printed = answer.get("printed");
        assertEquals(row.title(), answer.get("title").textValue());
        assertEquals(row.plain(), answer.get("plain").textValue());
        assertEquals(row.value(), printed.get("value").textValue());
        assertEquals(row.limitThere(), printed.get("limit").textValue());
        assertEquals(row.margin(), printed.get("margin").textValue());
        assertEquals(row.unit(), printed.get("unit").textValue());
        assertEquals(row.where(), answer.get("place").textValue());
        assertEquals(
                answer.get("uncertainty").isNull(), printed.get("uncertainty").isNull());
        if (!printed.get("uncertainty").isNull()) {
            assertTrue(
                    row.notes()
                            .contains("U = "
                                    + printed.get("uncertainty").textValue().replace("± ", "") + " " + row.unit()
                                    + ", probability of conformity "
                                    + printed.get("probability").textValue()),
                    row.notes().toString());
        }
    }

    @ParameterizedTest
    @MethodSource("passing")
    void thePaperRepeatsTheAnswer(Findings.Case one) {
        JsonNode answer = answer(one);
        JsonNode printed = answer.get("printed");
        for (String said : List.of(
                answer.get("title").textValue(),
                answer.get("plain").textValue(),
                printed.get("value").textValue(),
                printed.get("limit").textValue(),
                printed.get("margin").textValue(),
                printed.get("unit").textValue(),
                answer.get("place").textValue(),
                printed.get("probability").isNull()
                        ? ""
                        : printed.get("probability").textValue())) {
            assertTrue(paper.contains(said), () -> "missing: " + said + " in " + paper);
        }
    }

    @Test
    void theKindsOfFindingsDiffer() {
        assertEquals("93.13", row(content.rows(), "conductor-resistance").value());
        assertEquals("18.00", row(content.rows(), "return-loss").value());
        assertEquals("0", row(content.rows(), "spark-faults").value());
        assertEquals("4.99997", row(content.rows(), "resistance-unbalance").value());
        assertEquals("0.00003", row(content.rows(), "resistance-unbalance").margin());
        assertEquals("0.0", row(content.rows(), "loop-resistance").margin());
        assertEquals(
                "pair 2 from 4, far end, 100.25 MHz",
                row(content.rows(), "acr-f").where());
        assertEquals(
                "pair 2, wire a, sample 4",
                row(content.rows(), "insulation-elongation").where());
        assertEquals(
                "Capacitance unbalance, pair to pair, root mean square, within a unit",
                row(content.rows(), "capacitance-unbalance-pair-to-pair-rms").title());
        assertEquals(
                "± 0.31",
                answer(passing().get(12)).get("printed").get("uncertainty").textValue());
    }

    @Test
    void aTemperatureWithManyDigitsHasOneDecimalOnPaperToo() throws Exception {
        double celsius = 22.77777777777778;
        TestConditions usual = CertificateSamples.conditions();
        CertificateContent warm = CertificateContent.of(
                CertificateSamples.issuing(),
                CertificateSamples.item(),
                new TestConditions(
                        usual.record(),
                        usual.sourceSha256(),
                        celsius,
                        "°C",
                        Temperature.ofCelsius(celsius),
                        usual.started(),
                        usual.finished(),
                        usual.station(),
                        usual.technician(),
                        usual.equipment()),
                CertificateSamples.product(PAIRS),
                CertificateSamples.judgementOf(
                        set, passing().stream().map(Findings.Case::finding).toList()),
                set);
        try (PDDocument document = Loader.loadPDF(CertificatePdf.render(warm))) {
            String text = oneLine(new PDFTextStripper().getText(document));
            assertTrue(text.contains(Figures.temperature(celsius, "°C")), text);
            assertTrue(text.contains("22.8 °C"), text);
            assertFalse(text.contains("22.77"), text);
        }
    }

    /** Whatever a shipped limit set can ask has one voice. */
    @Test
    void everyRequirementOfEveryShippedSet() {
        for (LimitSet shipped : LimitFiles.load(Optional.empty(), Laws::named).all()) {
            int pairs = shipped.pairs().from();
            Judgement judgement = CertificateSamples.judgementMeetingAll(shipped, pairs);
            List<Row> rows =
                    CertificateSamples.contentOf(shipped, judgement, pairs).rows();
            judgement
                    .findings()
                    .forEach(finding -> assertSame(
                            JSON.valueToTree(FindingAnswer.of(
                                    finding, shipped, CertificateSamples.product(pairs), Wording.english())),
                            row(rows, finding.requirement())));
        }
    }
}
