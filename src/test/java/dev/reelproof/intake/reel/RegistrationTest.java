package dev.reelproof.intake.reel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.intake.Fault;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.result.BrokenResults;
import dev.reelproof.intake.result.ResultReader;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.Length;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Products and reels as they are registered, and whether a result fits them. */
class RegistrationTest {
    private static final String PRODUCT = "{\"description\": \"4-pair 23 AWG category 6A, riser\","
            + "\"limitSet\": \"category-6a-cable\", \"pairs\": 4, \"gauge\": \"23 AWG\", \"nominalVelocity\": 0.68,"
            + "\"lays\": [{\"pair\": 1, \"lay\": {\"value\": 9.1, \"unit\": \"mm\"}}],"
            + "\"units\": [{\"unit\": 1, \"from\": 1, \"to\": 2, \"adjacentTo\": [2]},"
            + "{\"unit\": 2, \"from\": 3, \"to\": 4}]}";
    private static final String REEL = "{\"plant\": \"north\", \"product\": \"HD6A-4P\","
            + "\"length\": {\"value\": 305, \"unit\": \"m\"}, \"order\": \"SO/4711\", \"customer\": \"invented\"}";

    private static Product product(String json) {
        return ProductReader.read("HD6A-4P", json.getBytes(StandardCharsets.UTF_8));
    }

    private static ReelRegistration reel(String json) {
        return ReelReader.read(" R-1 ", json.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void readsAProduct() {
        assertEquals(
                new Product(
                        "HD6A-4P",
                        "4-pair 23 AWG category 6A, riser",
                        "category-6a-cable",
                        4,
                        "23 AWG",
                        0.68,
                        Map.of(1, Length.of(9.1, "mm")),
                        List.of(new CoreUnit(1, 1, 2, Set.of(2)), new CoreUnit(2, 3, 4, Set.of()))),
                product(PRODUCT));
        assertEquals(
                new Product("HD6A-4P", "", "s", 1, "", null, Map.of(), List.of()),
                product("{\"limitSet\": \"s\", \"pairs\": 1}"));
    }

    @Test
    void readsAReel() {
        assertEquals(
                new ReelRegistration(
                        "R-1", "north", "HD6A-4P", Length.ofMetres(305), 305, "m", null, "SO/4711", "invented"),
                reel(REEL));
        ReelRegistration bare = reel("{\"product\": \"P\", \"length\": {\"value\": 1, \"unit\": \"kft\"}}");
        assertEquals("kft", bare.lengthUnit());
        assertEquals(1, bare.lengthSent());
        assertNull(bare.plant());
        assertNull(bare.order());
        assertNull(bare.customer());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"limitSet\": \"category-6a-cable\",    | ``                        | /limitSet        | missing",
                "\"pairs\": 4,                           | ``                        | /pairs           | missing",
                "\"pairs\": 4                            | \"pairs\": 0              | /pairs           | from 1",
                "\"pairs\": 4                            | \"pairs\": 4.5            | /pairs           | whole",
                "\"gauge\"                               | \"guage\"                 | /guage           | 'gauge'",
                "0.68                                    | 68                        | /nominalVelocity | between 0 and 1",
                "\"pair\": 1                             | \"pair\": 5               | /lays/0/pair     | from 1 to 4",
                "\"mm\"                                  | \"MHz\"                   | /lays/0/lay      | length",
                "9.1                                     | -9.1                      | /lays/0/lay      | positive",
                "\"to\": 4                               | \"to\": 5                 | /units/1/to      | from 1 to 4",
                "\"from\": 3, \"to\": 4                  | \"from\": 4, \"to\": 3    | /units/1         | in order",
                "\"from\": 3                             | \"from\": 2               | /units           | another unit",
                "\"from\": 3                             | \"from\": 4               | /units           | each pair needs",
                "\"unit\": 2                             | \"unit\": 1               | /units/1/unit    | twice",
                "[2]                                     | [3]                       | /units           | touch unit 3",
                "{\"pair\": 1, \"lay\": {\"value\": 9.1, \"unit\": \"mm\"}} | {\"pair\": 1, \"lay\": {\"value\": 9.1, \"unit\": \"mm\"}},{\"pair\": 1, \"lay\": {\"value\": 9, \"unit\": \"mm\"}} | /lays/1/pair | twice"
            })
    void refusesABrokenProduct(String from, String to, String where, String words) {
        assertTrue(PRODUCT.contains(from), from);
        IntakeException refused = assertThrows(IntakeException.class, () -> product(PRODUCT.replace(from, to)));
        assertFault(where, words, refused);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "\"product\": \"HD6A-4P\", | ``              | /product | missing",
                "HD6A-4P                  | HD6A 4P         | /product | identifier",
                "305                      | -305            | /length  | positive",
                "\"m\"                    | \"dB\"          | /length  | unit of length",
                "north                    | no/rth          | /plant   | identifier",
                "\"invented\"             | 7               | /customer | must be text",
                "\"order\"                | \"ordr\"        | /ordr    | 'order'"
            })
    void refusesABrokenReel(String from, String to, String where, String words) {
        assertTrue(REEL.contains(from), from);
        IntakeException refused = assertThrows(IntakeException.class, () -> reel(REEL.replace(from, to)));
        assertFault(where, words, refused);
    }

    @Test
    void refusesCodesThatCannotStandInAnAddress() {
        byte[] product = PRODUCT.getBytes(StandardCharsets.UTF_8);
        byte[] reel = REEL.getBytes(StandardCharsets.UTF_8);
        assertFault(
                "product", "identifier", assertThrows(IntakeException.class, () -> ProductReader.read("a b", product)));
        assertFault("reel", "identifier", assertThrows(IntakeException.class, () -> ReelReader.read("a/b", reel)));
    }

    private static String marked(String marks) {
        return REEL.replace("\"order\"", "\"lengthMarks\": " + marks + ", \"order\"");
    }

    @Test
    void readsLengthMarks() {
        assertEquals(
                new LengthMarks(1250, 1555, "m"),
                reel(marked("{\"first\": 1250, \"last\": 1555, \"unit\": \"m\"}"))
                        .lengthMarks());
        assertEquals(
                new LengthMarks(5102, 4101, "ft"),
                reel(marked("{\"first\": 5102, \"last\": 4101, \"unit\": \"ft\"}"))
                        .lengthMarks());
        assertNull(reel(REEL).lengthMarks());
        assertNull(reel(marked("null")).lengthMarks());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"first\": \"NaN\", \"last\": 1555, \"unit\": \"m\"}   | /lengthMarks/first | number",
                "{\"first\": NaN, \"last\": 1555, \"unit\": \"m\"}       | /lengthMarks/first | finite",
                "{\"first\": 1e999, \"last\": 1555, \"unit\": \"m\"}     | /lengthMarks/first | finite",
                "{\"first\": -1, \"last\": 304, \"unit\": \"m\"}         | /lengthMarks       | 0 or more",
                "{\"first\": 305, \"last\": -1, \"unit\": \"m\"}         | /lengthMarks       | 0 or more",
                "{\"last\": 1555, \"unit\": \"m\"}                       | /lengthMarks/first | missing",
                "{\"first\": 1250, \"unit\": \"m\"}                      | /lengthMarks/last  | missing",
                "{\"first\": 1250, \"last\": 1555}                       | /lengthMarks/unit  | missing",
                "{\"first\": 1250, \"last\": 1555, \"unit\": \"yard\"}   | /lengthMarks       | unknown unit of length",
                "{\"first\": 1250, \"last\": 1250, \"unit\": \"m\"}      | /lengthMarks       | between two marks",
                "{\"frist\": 1250, \"last\": 1555, \"unit\": \"m\"}      | /lengthMarks/frist | 'first'",
                "[1250, 1555]                                          | /lengthMarks       | object",
            })
    void refusesBrokenLengthMarks(String marks, String where, String words) {
        IntakeException refused = assertThrows(IntakeException.class, () -> reel(marked(marks)));
        assertFault(where, words, refused);
    }

    @Test
    void lengthMarksThatDoNotFitTheLengthAreRefusedWithBothFigures() {
        IntakeException refused = assertThrows(
                IntakeException.class, () -> reel(marked("{\"first\": 1250, \"last\": 1455, \"unit\": \"m\"}")));
        assertFault(
                "/lengthMarks", "205 m lie between the length marks 1250 to 1455 m, but the length is 305 m", refused);
    }

    private static void assertFault(String where, String words, IntakeException refused) {
        assertEquals(Kind.CONTENT, refused.kind());
        Fault fault = refused.faults().get(0);
        assertEquals(where, fault.where(), refused::getMessage);
        assertTrue(fault.message().contains(words), refused::getMessage);
    }

    private static ReelResult result(String csv) {
        Upload upload = new Upload(List.of(
                new Part("result", "application/json", BrokenResults.sample().getBytes(StandardCharsets.UTF_8)),
                new Part(
                        "more.csv",
                        "text/csv",
                        ("property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit\n" + csv)
                                .getBytes(StandardCharsets.UTF_8))));
        return ResultReader.read(upload, OffsetDateTime.parse("2026-03-02T15:00:00Z"))
                .result();
    }

    @Test
    void aResultOfTheProductFits() {
        assertEquals(
                List.of(),
                ProductFit.check(result("mutual-capacitance,4,,,,,,15,nF\n"), product(PRODUCT))
                        .listed());
    }

    @Test
    void namesEveryPairBeyondTheProducts() {
        Faults faults = ProductFit.check(
                result("mutual-capacitance,5,,,,,,15,nF\nfext,1,6,,far,1,MHz,60,dB\nfext,1,6,,far,2,MHz,60,dB\n"),
                product(PRODUCT));
        assertEquals(
                List.of(
                        new Fault("more.csv:2", "mutual-capacitance: pair 5 is beyond the 4 pairs of product HD6A-4P"),
                        new Fault("more.csv:3", "fext: partner 6 is beyond the 4 pairs of product HD6A-4P")),
                faults.listed());
    }

    @Test
    void namesAnotherProductAsAWrongReel() {
        Product other = new Product("OTHER", "", "s", 4, "", null, Map.of(), List.of());
        Faults faults = ProductFit.check(result("mutual-capacitance,4,,,,,,15,nF\n"), other);
        assertEquals("/product", faults.listed().get(0).where());
        assertTrue(faults.listed().get(0).message().contains("wrong reel"));
    }
}
