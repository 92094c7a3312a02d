package dev.reelproof.intake.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.intake.Fault;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.reel.ReelFit;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/** Which reel the document and the files of an upload say they are of. */
class StatedReelTest {
    private static final String HEADER = "property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit";
    private static final String ROW = "spark-faults,,,,,,,0,count";
    private static final String WITHSTAND = "dielectric-withstand,,,,,,,0,count";

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] document(String more) {
        return utf8(
                "{\"product\": \"P\", \"length\": {\"value\": 1, \"unit\": \"km\"}, \"temperature\": {\"value\": 20,"
                        + " \"unit\": \"°C\"}, \"finished\": \"2026-03-02T14:09:30Z\"" + more + "}");
    }

    private static ReadResult read(Part... parts) {
        return ResultReader.read(new Upload(List.of(parts)), OffsetDateTime.parse("2026-03-02T15:00:00Z"));
    }

    private static Part result(String more) {
        return new Part(Part.RESULT, "application/json", document(more));
    }

    private static Part csv(String text) {
        return new Part("bay.csv", "text/csv", utf8(text));
    }

    private static Part zip(String... namesAndTexts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
                zip.write(utf8(namesAndTexts[i + 1]));
            }
        }
        return new Part("bay.zip", "application/zip", bytes.toByteArray());
    }

    @Test
    void theDocumentAndEachCsvFileMaySayIt() {
        assertEquals(List.of(), read(result(""), csv(HEADER + "\n" + ROW)).reels());
        assertEquals(
                List.of(new StatedReel("/reel", "R-1"), new StatedReel("bay.csv:2", "R-2")),
                read(result(", \"reel\": \"R-1\""), csv(HEADER + ",reel\n" + ROW + ",R-2\n" + WITHSTAND + ",R-2"))
                        .reels());
        assertEquals(
                List.of(new StatedReel("bay.csv:2", "R-2"), new StatedReel("bay.csv:3", "R-3")),
                read(result(""), csv("reel," + HEADER + "\nR-2," + ROW + "\nR-3," + WITHSTAND))
                        .reels());
        assertEquals(
                List.of(), read(result(""), csv(HEADER + ",reel\n" + ROW + ",")).reels());
    }

    @Test
    void aZipFileSaysItInItsDocumentAndItsCsvFiles() throws IOException {
        String document = new String(document(", \"reel\": \"R-1\""), StandardCharsets.UTF_8);
        assertEquals(
                List.of("R-1", "R-2"),
                read(zip("result.json", document, "a.csv", HEADER + ",reel\n" + ROW + ",R-2")).reels().stream()
                        .map(StatedReel::number)
                        .toList());
    }

    @Test
    void aReasonOfARetestIsRead() {
        assertEquals(
                "lead was loose",
                read(result(", \"retestReason\": \"lead was loose\""), csv(HEADER + "\n" + ROW))
                        .retestReason());
        assertNull(read(result(""), csv(HEADER + "\n" + ROW)).retestReason());
    }

    @Test
    void anotherReelIsRefusedWithBothNumbers() {
        List<Fault> faults = ReelFit.check(
                        List.of(new StatedReel("/reel", "R-2"), new StatedReel("bay.csv:2", "R-1")), "R-1", true)
                .listed();
        assertEquals(1, faults.size());
        assertEquals("/reel", faults.get(0).where());
        assertTrue(faults.get(0).message().contains("R-2"), faults.get(0).message());
        assertTrue(faults.get(0).message().contains("R-1"), faults.get(0).message());
    }

    @Test
    void aNumberIsComparedAsItStandsOnTheLabel() {
        List<StatedReel> scanned = List.of(new StatedReel("/reel", "]C1R-1"), new StatedReel("bay.csv:2", "*R-1*"));
        assertEquals(0, ReelFit.check(scanned, "R-1", true).count());
        assertEquals(
                1,
                ReelFit.check(List.of(new StatedReel("/reel", "r-1")), "R-1", false)
                        .count());
    }

    @Test
    void aResultThatNamesNoReelIsRefusedWhereThePlantDemandsIt() {
        assertEquals(0, ReelFit.check(List.of(), "R-1", false).count());
        assertEquals(
                "/reel", ReelFit.check(List.of(), "R-1", true).listed().get(0).where());
    }

    @Test
    void aReasonInAFormIsPlainTextOrNothing() {
        assertNull(SentTest.reason("  "));
        assertEquals("lead", SentTest.reason(" lead\n"));
        List<String> refused = new ArrayList<>(List.of("a\u0000b", "x".repeat(SentTest.LONGEST_REASON + 1)));
        refused.forEach(text -> assertThrows(IntakeException.class, () -> SentTest.reason(text)));
    }
}
