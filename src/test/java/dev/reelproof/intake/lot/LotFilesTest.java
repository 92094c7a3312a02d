package dev.reelproof.intake.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.intake.IntakeException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Many lots in one file: lines of JSON, and CSV. */
class LotFilesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static ByteArrayInputStream bytes(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<NumberedReport> all(Iterator<NumberedReport> reports) {
        List<NumberedReport> all = new ArrayList<>();
        reports.forEachRemaining(all::add);
        return all;
    }

    private static List<NumberedReport> csv(String text) {
        return all(new LotCsv(bytes(text)));
    }

    private static JsonNode json(NumberedReport report) throws IOException {
        assertEquals(null, report.fault());
        return JSON.readTree(report.json());
    }

    private static void assertJson(String expected, NumberedReport got) throws IOException {
        assertEquals(JSON.readTree(expected.replace('\'', '"')), json(got));
    }

    @Test
    void givesEachLineItsNumber() {
        List<NumberedReport> lines = all(new ReportLines(bytes("\uFEFF{\"a\":1}\r\n\n  \n{\"b\":2}")));
        assertEquals(List.of(1, 4), lines.stream().map(NumberedReport::line).toList());
        assertEquals("{\"b\":2}", new String(lines.get(1).json(), StandardCharsets.UTF_8));
        assertEquals(List.of(), all(new ReportLines(bytes(""))));
    }

    @Test
    void leavesOutALineThatIsTooLongAndReadsOn() {
        List<NumberedReport> lines = all(new ReportLines(bytes("x".repeat(5_000_000) + "\n{}\n")));
        assertTrue(lines.get(0).fault().contains("more than 4194304 bytes"));
        assertEquals(2, lines.get(1).line());
        assertEquals(null, lines.get(1).fault());
    }

    @Test
    void makesOneLotOfRowsThatFollowEachOther() throws IOException {
        List<NumberedReport> lots = csv(
                """
                id,kind,quantity,quantityUnit,made,step,machine,run,operator,setting:lay,setting:die set,setting:turns,inputLot,inputQuantity,inputUnit,from,to,positionUnit,onParentFrom,onParentTo,onParentUnit,sampleProperty,sampleValue,sampleUnit,sampleAt,sampleAtUnit
                TP-1,twisted-pair,1000,m,2026-02-11T09:00:00Z,twisting,TWN-1,RUN-1,op-7,14.2 mm,D-17,3,IC-1,1025,m,0,1000,m,0,1025,m,diameter,1.9,mm,5,m
                TP-1,,,,,,,,,,,,IC-2,1025,m,,,,,,,,,,,
                TP-2,twisted-pair,2e3,m,2026-02-11T09:00:00Z,,,,,,,,,,,,,,,,,,,,,
                """);
        assertEquals(List.of(2, 4), lots.stream().map(NumberedReport::line).toList());
        assertJson(
                """
                {'id': 'TP-1', 'kind': 'twisted-pair', 'made': '2026-02-11T09:00:00Z', 'step': 'twisting',
                 'machine': 'TWN-1', 'run': 'RUN-1', 'operator': 'op-7', 'quantity': {'value': 1000, 'unit': 'm'},
                 'settings': {'lay': {'value': 14.2, 'unit': 'mm'}, 'die set': 'D-17', 'turns': 3},
                 'inputs': [{'lot': 'IC-1', 'quantity': {'value': 1025, 'unit': 'm'},
                             'position': {'from': {'value': 0, 'unit': 'm'}, 'to': {'value': 1000, 'unit': 'm'},
                                          'onParentFrom': {'value': 0, 'unit': 'm'}, 'onParentTo': {'value': 1025, 'unit': 'm'}}},
                            {'lot': 'IC-2', 'quantity': {'value': 1025, 'unit': 'm'}}],
                 'samples': [{'property': 'diameter', 'value': 1.9, 'unit': 'mm', 'at': {'value': 5, 'unit': 'm'}}]}""",
                lots.get(0));
        assertEquals(2000, json(lots.get(1)).at("/quantity/value").doubleValue());
    }

    private static final String HEADER = "id,kind,quantity,quantityUnit,made,inputLot,inputQuantity,inputUnit\n";

    @Test
    void countsARepeatedRowOnce() throws IOException {
        List<NumberedReport> lots = csv(HEADER
                + "A,unit,1,km,2026-02-11T09:00:00Z,P,1,m\nA,unit,1,km,2026-02-11T09:00:00Z,P,1,m\n"
                + "B,unit,1,km,2026-02-11T09:00:00Z,,,\nB,unit,1,km,2026-02-11T09:00:00Z,,,\n");
        assertEquals(1, json(lots.get(0)).get("inputs").size());
        assertEquals(0, json(lots.get(1)).get("inputs").size());
    }

    @Test
    void namesTheLineThatIsWrongAndReadsOn() throws IOException {
        List<NumberedReport> lots = csv(HEADER
                + "A,unit,1,km,2026-02-11T09:00:00Z\n"
                + "B,unit,1,km,2026-02-11T09:00:00Z,P,1,m\nB,core,,,,Q,1,m\n"
                + "C,unit,much,km,2026-02-11T09:00:00Z,P,1,m\n");
        assertTrue(
                lots.get(0).fault().contains("5 columns where the header names 8"),
                lots.get(0).fault());
        assertEquals(2, lots.get(0).line());
        assertTrue(
                lots.get(1).fault().contains("line 4 tells another 'kind'"),
                lots.get(1).fault());
        assertEquals("much", json(lots.get(2)).at("/quantity/value").textValue());
    }

    @Test
    void saysWhereItIsNoCsvAnyMore() {
        List<NumberedReport> lots =
                csv(HEADER + "A,unit,1,km,2026-02-11T09:00:00Z,P,1,m\nB,\"unit\"x,1,km,2026-02-11T09:00:00Z,P,1,m\n");
        assertEquals(2, lots.size());
        assertEquals(null, lots.get(0).fault());
        assertTrue(
                lots.get(1).fault().contains("nothing from here on was read"),
                lots.get(1).fault());
    }

    @Test
    void refusesAnotherHeader() {
        IntakeException wrong = assertThrows(
                IntakeException.class, () -> csv("id,kind,quantity,quantityUnit,inputlot,id\nA,unit,1,km,,\n"));
        assertEquals(IntakeException.Kind.CONTENT, wrong.kind());
        assertEquals(3, wrong.faults().size(), wrong.getMessage());
        assertTrue(wrong.faults().get(0).message().contains("did you mean 'inputLot'"));
        assertEquals(
                IntakeException.Kind.MALFORMED,
                assertThrows(IntakeException.class, () -> csv("")).kind());
    }
}
