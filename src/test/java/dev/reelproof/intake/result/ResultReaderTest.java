package dev.reelproof.intake.result;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.intake.Fault;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.result.BrokenResults.Broken;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ResultReaderTest {
    private static final OffsetDateTime RECEIVED = OffsetDateTime.parse("2026-03-02T15:00:00Z");
    private static final String HEADER = "property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit\n";

    /** A document that leaves all values to the files. */
    private static final String CONDITIONS = "{\"product\": \"HD6A-4P\", \"length\": {\"value\": 1, \"unit\": \"kft\"},"
            + "\"temperature\": {\"value\": 68, \"unit\": \"°F\"}, \"finished\": \"2026-03-02T14:09:30Z\","
            + "\"equipment\": [{\"id\": \"na-07\"}]%s}";

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static ReadResult read(String json) {
        return ResultReader.read(Upload.ofDocument(utf8(json)), RECEIVED);
    }

    private static ReadResult withCsv(byte[]... files) {
        return withCsv("", files);
    }

    private static ReadResult withCsv(String more, byte[]... files) {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part("result", "application/json", utf8(CONDITIONS.formatted(more))));
        for (int i = 0; i < files.length; i++) {
            parts.add(new Part("bay" + (i + 1) + ".csv", "text/csv", files[i]));
        }
        return ResultReader.read(new Upload(parts), RECEIVED);
    }

    private static Fault csvFault(String csv) {
        return csvFault(Kind.CONTENT, utf8(csv));
    }

    private static Fault csvFault(Kind kind, byte[] csv) {
        IntakeException refused = assertThrows(IntakeException.class, () -> withCsv(csv));
        assertEquals(kind, refused.kind());
        assertEquals(1, refused.faults().size(), () -> refused.faults().toString());
        return refused.faults().get(0);
    }

    private static void assertFault(String where, String words, Fault fault) {
        assertEquals(where, fault.where(), fault::message);
        assertTrue(fault.message().contains(words), fault::message);
    }

    @Test
    void readsTheSampleOfTheContract() {
        ReadResult read = read(BrokenResults.sample());
        ReelResult result = read.result();
        assertEquals(List.of(), read.warnings());
        assertEquals("HD6A-4P", result.product());
        assertEquals(305, result.length().metres());
        assertEquals(31, result.temperature().celsius());
        assertEquals("bay-2", result.station());
        assertEquals(OffsetDateTime.parse("2026-03-02T14:09:30Z"), result.finished());
        assertEquals(List.of(new Equipment("na-07", LocalDate.of(2026, 12, 31), Set.of())), result.equipment());
        Reading resistance = result.readings().get(0);
        assertEquals(Property.CONDUCTOR_RESISTANCE, resistance.property());
        assertEquals(Subject.ofConductor(1, Conductor.A), resistance.subject());
        assertEquals(21.05, resistance.value());
        assertEquals("/readings/0", resistance.origin().of(0));
        Sweep next = result.sweeps().get(1);
        assertEquals(Subject.ofCombination(1, 2).at(End.NEAR), next.subject());
        assertArrayEquals(new double[] {74.3, 71.7, 69}, next.values());
        assertArrayEquals(new double[] {1.0, 1.5, 2.25}, next.grid().toArray());
        assertEquals("/sweeps/1/values/2", next.origin().of(2));
    }

    static Stream<Broken> broken() {
        return BrokenResults.all().stream();
    }

    @ParameterizedTest
    @MethodSource("broken")
    void refusesABrokenDocumentWithOneFaultThatSaysWhereAndWhat(Broken broken) {
        IntakeException refused = assertThrows(IntakeException.class, () -> read(broken.json()));
        assertEquals(Kind.CONTENT, refused.kind());
        Fault fault = refused.faults().stream()
                .filter(found ->
                        found.where().equals(broken.where()) && found.message().contains(broken.words()))
                .findFirst()
                .orElse(null);
        assertNotNull(fault, () -> refused.faults().toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''                       | result     | empty",
                "{\"product\": \"HD6A-4P\", | result:1:  | cut short",
                "not JSON                 | result:1:  | is not JSON",
                "{} 7                     | result:1:  | follows",
                "{\"a\": 1, \"a\": 2}     | result:1:  | twice"
            })
    void refusesADocumentThatIsNotJson(String json, String where, String words) {
        IntakeException refused = assertThrows(IntakeException.class, () -> read(json));
        assertEquals(Kind.MALFORMED, refused.kind());
        assertTrue(refused.faults().get(0).where().startsWith(where), refused::getMessage);
        assertTrue(refused.getMessage().contains(words), refused::getMessage);
    }

    @Test
    void refusesTheSampleCutShortAnywhere() {
        String sample = BrokenResults.sample().strip();
        for (int length = 0; length < sample.length(); length++) {
            String cut = sample.substring(0, length);
            assertEquals(
                    Kind.MALFORMED,
                    assertThrows(IntakeException.class, () -> read(cut)).kind());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "Infinity", "-Infinity", "1e999"})
    void refusesNumbersThatAreNotFinite(String token) {
        String reading = BrokenResults.sample().replace("21.05", token);
        assertFault(
                "/readings/0/value",
                "must be finite",
                assertThrows(IntakeException.class, () -> read(reading))
                        .faults()
                        .get(0));
        String sweep = BrokenResults.sample().replace("71.7", token);
        assertFault(
                "/sweeps/1/values/1",
                "must be finite",
                assertThrows(IntakeException.class, () -> read(sweep)).faults().get(0));
    }

    @Test
    void refusesANumberThatOverflowsInTheCanonicalUnit() {
        String huge = BrokenResults.sample().replace("15.1, \"unit\": \"nF\"", "1e308, \"unit\": \"F\"");
        assertFault(
                "/readings/1",
                "finite",
                assertThrows(IntakeException.class, () -> read(huge)).faults().get(0));
    }

    @Test
    void tellsAllFaultsAtOnce() {
        String json = BrokenResults.sample()
                .replace("305", "-305")
                .replace("\"conductor\": \"a\"", "\"conductor\": \"c\"")
                .replace("\"mutual-capacitance\"", "\"capacity\"")
                .replace("[6.1, 7.4, 9.1]", "[6.1]");
        IntakeException refused = assertThrows(IntakeException.class, () -> read(json));
        assertEquals(
                List.of("/length", "/readings/0/conductor", "/readings/1/property", "/sweeps/0/values"),
                refused.faults().stream().map(Fault::where).toList());
    }

    @Test
    void warnsOfWhatIsNotStated() {
        ReadResult read = read(BrokenResults.sample()
                .replace(", \"finished\": \"2026-03-02T14:09:30Z\"", "")
                .replace("\"equipment\": [{\"id\": \"na-07\", \"calibrationDue\": \"2026-12-31\"}],", "")
                .replace("\"grids\": {", "\"grids\": {\"spare\": {\"unit\": \"kHz\", \"values\": [772]}, "));
        assertEquals(RECEIVED, read.result().finished());
        assertEquals(3, read.warnings().size());
        assertTrue(read.warnings().get(0).contains("time of receipt, 2026-03-02T15:00Z"), read.warnings()::toString);
        assertTrue(read.warnings().get(1).contains("No equipment"), read.warnings()::toString);
        assertTrue(read.warnings().get(2).contains("'spare' is not used"), read.warnings()::toString);
    }

    @Test
    void warnsOfAClockThatIsAhead() {
        ReadResult read = read(BrokenResults.sample().replace("14:09:30Z", "15:09:30Z"));
        assertTrue(read.warnings().get(0).contains("clock"), read.warnings()::toString);
        assertEquals(
                List.of(),
                read(BrokenResults.sample().replace("14:09:30Z", "15:04:30Z")).warnings());
    }

    @Test
    void refusesAnUploadThatMeasuredNothing() {
        assertFault(
                "result",
                "nothing was measured",
                assertThrows(IntakeException.class, () -> withCsv()).faults().get(0));
    }

    @ParameterizedTest
    @CsvSource({
        "conductor-resistance, ohm/km",
        "mutual-capacitance, nF/kft",
        "capacitance-unbalance-to-ground, pF/100 m",
        "insertion-loss, dB/100 m",
        "acr-f, dB/km",
        "fext, dB/km",
        "ps-acr-f, dB/km",
        "propagation-delay, ns/100 m",
        "delay-skew, ns/km",
        "insulation-resistance, megohm·km",
        "insulation-resistance, megohm-mile",
        "insulation-tensile-strength, N/mm²",
        "loop-resistance, ohm/100 m",
        "mutual-conductance, micromho/km",
        "mutual-conductance, µS/mile",
        "insulation-faults, count/1500 m"
    })
    void takesUnitsWithALengthWhereALawKnowsLength(String property, String unit) {
        Property known = Property.named(property);
        assertEquals(unit, new Measurements(new Faults()).unit(known, unit).text());
    }

    @ParameterizedTest
    @CsvSource({
        "next, dB/100 m, no value per length",
        "ps-next, dB/km, no value per length",
        "return-loss, dB/100 m, no value per length",
        "tcl, dB/km, no value per length",
        "el-tctl, dB/km, no value per length",
        "resistance-unbalance, %/km, no value per length",
        "spark-faults, count/km, no value per length",
        "conductor-elongation, %/m, no value per length",
        "strip-force, N/m, no value per length",
        "jacket-thickness, mm/m, no value per length",
        "insulation-resistance, megohm/km, a product such as megohm·km",
        "conductor-resistance, ohm·km, not as the product",
        "conductor-resistance, nF, resistance",
        "next, %, level in decibels",
        "strip-force, kg, force",
        "mutual-capacitance, ' ', unknown unit",
        "mutual-capacitance, nF/0 m, positive"
    })
    void refusesUnitsThatDoNotFit(String property, String unit, String words) {
        Property known = Property.named(property);
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> new Measurements(new Faults()).unit(known, unit));
        assertTrue(refused.getMessage().contains(words), refused::getMessage);
    }

    @Test
    void everyPropertyTakesItsCanonicalUnitAndSignsWhereTheyMakeSense() {
        Set<String> signed = Set.of("dB", "pF");
        Set<Property> signedByThemselves = Set.of(Property.GROUP_DELAY, Property.LENGTH_MARKING_ERROR);
        for (Property property : Property.values()) {
            Measurements measurements = new Measurements(new Faults());
            var unit = measurements.unit(property, property.canonicalUnit());
            ValueRules.requireValue(property, 1, unit);
            if (signed.contains(property.canonicalUnit()) || signedByThemselves.contains(property)) {
                ValueRules.requireValue(property, -1, unit);
            } else {
                assertThrows(IllegalArgumentException.class, () -> ValueRules.requireValue(property, -1, unit));
            }
            assertThrows(IllegalArgumentException.class, () -> ValueRules.requireValue(property, Double.NaN, unit));
        }
    }

    // CSV

    @Test
    void readsRowsAsReadingsAndSweeps() {
        ReelResult result = withCsv(utf8(HEADER
                        + "conductor-resistance,1,,a,,,,69.1,ohm/km\n"
                        + "insertion-loss,1,,,,1,MHz,6.1,dB\n"
                        + "next,1,2,,near,1000,kHz,74.3,dB\n"
                        + "insertion-loss,1,,,,1.5,MHz,7.4,dB\n"
                        + "next,1,2,,near,1500,kHz,71.7,dB\n"
                        + "capacitance-unbalance-pair-to-pair,1,2,,,,,-11,pF\n"))
                .result();
        assertEquals(2, result.readings().size());
        Reading resistance = result.readings().get(0);
        assertEquals(69.1, resistance.value());
        assertEquals(1000, resistance.unit().referredTo().orElseThrow().metres());
        assertEquals("bay1.csv:2", resistance.origin().of(0));
        assertEquals(-11, result.readings().get(1).value());
        assertEquals(2, result.sweeps().size());
        Sweep loss = result.sweeps().get(0);
        assertArrayEquals(new double[] {6.1, 7.4}, loss.values());
        assertEquals("bay1.csv:5", loss.origin().of(1));
        Sweep next = result.sweeps().get(1);
        assertEquals("bay1.csv:6", next.origin().of(1));
        assertSame(loss.grid(), next.grid());
    }

    @Test
    void documentAndFilesShareGrids() {
        ReelResult result = withCsv(
                        ", \"grids\": {\"g\": {\"unit\": \"kHz\", \"values\": [1000, 1500]}}, \"sweeps\":"
                                + "[{\"property\": \"insertion-loss\", \"pair\": 1, \"grid\": \"g\", \"unit\": \"dB\","
                                + " \"values\": [6.1, 7.4]}]",
                        utf8(HEADER + "insertion-loss,2,,,,1,MHz,6.1,dB\ninsertion-loss,2,,,,1.5,MHz,7.4,dB\n"))
                .result();
        assertSame(result.sweeps().get(0).grid(), result.sweeps().get(1).grid());
    }

    @Test
    void takesAByteOrderMarkCrLfQuotesBlanksAndAnyOrderOfColumns() {
        ReelResult result = withCsv(
                        utf8("\uFEFFunit,value,frequencyUnit,frequency,end,conductor,partner,pair,property\r\n"
                                + "ohm, \"21.05\" ,,,,b,,1,\"conductor-resistance\"\r\n"
                                + "\r\n"
                                + "%,12,,,,,,,jacket-elongation"))
                .result();
        assertEquals(21.05, result.readings().get(0).value());
        assertEquals("bay1.csv:2", result.readings().get(0).origin().of(0));
        assertEquals("bay1.csv:4", result.readings().get(1).origin().of(0));
    }

    @Test
    void takesSamples() {
        ReelResult result = withCsv(utf8(HEADER.replace("unit\n", "unit,sample\n")
                        + "strip-force,1,,a,,,,20,N,1\nstrip-force,1,,a,,,,5,lbf,2\n"))
                .result();
        assertEquals(2, result.readings().get(1).subject().sample());
        assertEquals(5 * 4.4482216152605, result.readings().get(1).value(), 1e-12, "1 lbf in N, exact by definition");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "next,1,2,,near,1,MHz,74.3              | columns",
                "next,1,2,,near,1,MHz,74,3,dB           | decimals with a point",
                "nxt,1,2,,near,1,MHz,74.3,dB            | did you mean 'next'?",
                ",1,2,,near,1,MHz,74.3,dB               | property is empty",
                "next,1,2,,near,1,MHz,74.3,             | unit is empty",
                "next,1,2,,near,1,MHz,,dB               | value is empty",
                "next,1,2,,near,1,MHz,74.3,dBm          | unknown unit",
                "next,1,2,,near,1,MHz,74.3,nF           | unit of capacitance",
                "next,1,2,,near,1,MHz,74.3,dB/100 m     | no value per length",
                "next,1,2,,near,1,MHz,NaN,dB            | must be finite",
                "next,1,2,,near,1,MHz,-inf,dB           | must be finite",
                "next,1,2,,near,1,MHz,1e999,dB          | must be finite",
                "next,1,2,,near,1,MHz,\"74,3\",dB       | decimal point",
                "next,1,2,,near,1,MHz,\"1,074.3\",dB    | thousands separators",
                "next,1,2,,near,1,MHz,1 074.3,dB        | thousands separators",
                "next,1,2,,near,1,MHz,0x1p3,dB          | not a number",
                "next,1,2,,near,1,MHz,7d,dB             | not a number",
                "next,1,2,,near,1,,74.3,dB              | frequencyUnit is empty",
                "next,1,2,,near,1,dB,74.3,dB            | unit of frequency",
                "next,1,2,,near,0,MHz,74.3,dB           | positive",
                "next,1,2,,near,-1,MHz,74.3,dB          | positive",
                "next,1,2,,near,,MHz,74.3,dB            | without a frequency",
                "next,1,2,,near,,,74.3,dB               | send it as a sweep",
                "next,1,2,,,1,MHz,74.3,dB               | needs an end",
                "next,1,2,,west,1,MHz,74.3,dB           | 'near' or 'far'",
                "next,1,,,near,1,MHz,74.3,dB            | combination",
                "next,1,1,,near,1,MHz,74.3,dB           | its own partner",
                "next,0,2,,near,1,MHz,74.3,dB           | pair must be a whole number from 1",
                "next,1.0,2,,near,1,MHz,74.3,dB         | pair must be a whole number from 1",
                "next,1,99999999999,,near,1,MHz,1,dB    | partner must be a whole number from 1",
                "conductor-resistance,1,,c,,,,21,ohm    | 'a' or 'b'",
                "conductor-resistance,1,,,,,,21,ohm     | conductor (pair and conductor)",
                "conductor-resistance,1,,a,,,,-21,ohm   | above 0",
                "conductor-resistance,1,,a,,1,MHz,21,ohm| not measured against frequency",
                "insulation-resistance,1,,,,,,-1,megohm | 0 or more",
                "spark-faults,,,,,,,1.5,count           | whole number"
            })
    void refusesABrokenRow(String row, String words) {
        assertFault("bay1.csv:3", words, csvFault(HEADER + "mutual-capacitance,1,,,,,,15.1,nF\n" + row + "\n"));
    }

    @Test
    void refusesFrequenciesThatDoNotAscendAtTheirLine() {
        String start = HEADER + "next,1,2,,near,1,MHz,74,dB\nnext,1,2,,near,2,MHz,70,dB\n";
        assertFault(
                "bay1.csv:4",
                "1.5 MHz is not above the one before (2.0 MHz, line 3)",
                csvFault(start + "next,1,2,,near,1.5,MHz,71,dB\nnext,1,2,,near,1.2,MHz,72,dB\n"));
        assertFault("bay1.csv:4", "without repeats", csvFault(start + "next,1,2,,near,2000,kHz,70,dB\n"));
    }

    @Test
    void refusesANegativeValueWithinASweepAtItsLine() {
        assertFault(
                "bay1.csv:3",
                "above 0",
                csvFault(HEADER + "propagation-delay,1,,,,1,MHz,1700,ns\npropagation-delay,1,,,,2,MHz,-1650,ns\n"));
    }

    @Test
    void refusesADuplicateInOneFileAcrossFilesAndAgainstTheDocument() {
        String row = "mutual-capacitance,1,,,,,,15.1,nF\n";
        assertFault("bay1.csv:3", "given already at bay1.csv:2", csvFault(HEADER + row + row));
        byte[] file = utf8(HEADER + row);
        assertFault(
                "bay2.csv:2",
                "given already at bay1.csv:2",
                assertThrows(IntakeException.class, () -> withCsv(file, file))
                        .faults()
                        .get(0));
        String more =
                ", \"readings\": [{\"property\": \"mutual-capacitance\", \"pair\": 1, \"value\": 15.1, \"unit\": \"nF\"}]";
        assertFault(
                "bay1.csv:2",
                "given already at /readings/0",
                assertThrows(IntakeException.class, () -> withCsv(more, file))
                        .faults()
                        .get(0));
        assertFault(
                "bay1.csv:3",
                "given already at bay1.csv:2",
                csvFault(HEADER + "insertion-loss,1,,,,1,MHz,6,dB\ninsertion-loss,1,,,,2,MHz,3,dB/100 m\n"));
    }

    @Test
    void keepsACombinationMeasuredFromBothItsPairs() {
        ReelResult result = withCsv(utf8(HEADER + "next,1,2,,near,1,MHz,74.3,dB\nnext,2,1,,near,1,MHz,74.1,dB\n"))
                .result();
        assertEquals(2, result.sweeps().size());
        assertEquals(74.1, result.sweeps().get(1).value(0));
    }

    @Test
    void refusesABrokenHeader() {
        assertFault("bay1.csv:1", "column 'frequencyUnit' is missing", csvFault(HEADER.replace("frequencyUnit,", "")));
        IntakeException refused =
                assertThrows(IntakeException.class, () -> withCsv(utf8(HEADER.replace("partner", "parnter"))));
        assertEquals(2, refused.faults().size());
        assertFault("bay1.csv:1", "did you mean 'partner'?", refused.faults().get(0));
        assertFault(
                "bay1.csv:1", "column 'partner' is missing", refused.faults().get(1));
        assertFault("bay1.csv:1", "'pair' stands twice", csvFault(HEADER.replace("property,", "property,pair,")));
        assertFault("bay1.csv:1", "column 10 has no name", csvFault(HEADER.replace("unit\n", "unit,\n")));
        assertFault("bay1.csv:1", "separated by commas", csvFault(HEADER.replace(',', ';')));
        assertFault("bay1.csv:1", "no rows", csvFault(HEADER));
    }

    @Test
    void refusesAFileThatIsNotCsvInUtf8() {
        assertFault("bay1.csv", "is empty", csvFault(Kind.MALFORMED, new byte[0]));
        assertFault("bay1.csv", "is empty", csvFault(Kind.MALFORMED, utf8("\uFEFF")));
        assertFault("bay1.csv", "not CSV", csvFault(Kind.MALFORMED, utf8(HEADER + "\"next,1,2\n")));
        byte[] latin1 = (HEADER + "mutual-capacitance,1,,,,,,0.0151,µF\n").getBytes(StandardCharsets.ISO_8859_1);
        assertFault("bay1.csv:2", "UTF-8", csvFault(Kind.MALFORMED, latin1));
        byte[] cutInACharacter = Arrays.copyOf(utf8(HEADER + "µ"), HEADER.length() + 1);
        assertFault("bay1.csv:2", "UTF-8", csvFault(Kind.MALFORMED, cutInACharacter));
        assertFault("bay1.csv:1", "UTF-8", csvFault(Kind.MALFORMED, HEADER.getBytes(StandardCharsets.UTF_16)));
    }

    @Test
    void listsTheFirstFiftyFaultsOfAFileAndCountsTheRest() {
        IntakeException refused =
                assertThrows(IntakeException.class, () -> withCsv(utf8(HEADER + "nxt,1,2\n".repeat(60))));
        assertEquals(50, refused.faults().size());
        assertEquals(10, refused.unlisted());
    }

    @Test
    void doesNotDependOnTheLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            assertEquals(5, read(BrokenResults.sample()).result().readings().size());
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void sweepsOnEqualFrequenciesShareOneGrid() {
        StringBuilder csv = new StringBuilder(HEADER);
        StringBuilder values = new StringBuilder();
        StringBuilder frequencies = new StringBuilder();
        for (int point = 0; point < 1000; point++) {
            double megahertz = 1 + point * 0.5;
            frequencies.append(point == 0 ? "" : ",").append(megahertz);
            values.append(point == 0 ? "" : ",").append(40.1234 + point * 0.01);
        }
        StringBuilder sweeps = new StringBuilder();
        for (int pair = 1; pair <= 52; pair++) {
            sweeps.append(pair == 1 ? "" : ",")
                    .append("{\"property\": \"insertion-loss\", \"grid\": \"g\", \"unit\": \"dB\", \"pair\": ")
                    .append(pair)
                    .append(", \"values\": [")
                    .append(values)
                    .append("]}");
            for (int point = 0; point < 1000; point++) {
                csv.append("return-loss,").append(pair).append(",,,near,").append(1 + point * 0.5);
                csv.append(",MHz,").append(20.1234 + point * 0.01).append(",dB\n");
            }
        }
        String more = ", \"grids\": {\"g\": {\"unit\": \"MHz\", \"values\": [" + frequencies + "]}}, \"sweeps\": ["
                + sweeps + "]";
        byte[] file = utf8(csv.toString());
        ReelResult result = withCsv(more, file).result();
        assertEquals(104, result.sweeps().size());
        Sweep first = result.sweeps().get(0);
        result.sweeps().forEach(sweep -> assertSame(first.grid(), sweep.grid()));
    }
}
