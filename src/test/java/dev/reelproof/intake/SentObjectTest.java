package dev.reelproof.intake;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.quantity.Length;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SentObjectTest {

    private static SentObject read(String json) {
        return SentObject.read("thing", json.getBytes(StandardCharsets.UTF_8), new Faults());
    }

    private static Fault only(String json, Consumer<SentObject> reading) {
        SentObject sent = read(json);
        reading.accept(sent);
        IntakeException refused =
                assertThrows(IntakeException.class, () -> sent.faults().refuseIfAny());
        assertEquals(Kind.CONTENT, refused.kind());
        assertEquals(1, refused.faults().size(), refused::getMessage);
        return refused.faults().get(0);
    }

    private static void assertFault(String where, String words, Fault fault) {
        assertEquals(where, fault.where());
        assertTrue(fault.message().contains(words), fault::message);
    }

    @Test
    void readsWhatIsRight() {
        SentObject sent = read("{\"n\": 1.5, \"w\": 3, \"t\": \" x \", \"l\": {\"value\": 1, \"unit\": \"kft\"},"
                + "\"at\": \"2026-03-02T14:05:00+01:00\", \"day\": \"2026-12-31\", \"v\": [1, 2.5], \"none\": null}");
        assertEquals(1.5, sent.number("n").orElseThrow());
        assertEquals(3, sent.whole("w", 1, 4).orElseThrow());
        assertEquals("x", sent.text("t", 5).orElseThrow());
        assertEquals(
                304.8, sent.quantity("l", Length::of).orElseThrow().metres(), 1e-9, "1000 ft of 0.3048 m, rounding");
        assertEquals(
                OffsetDateTime.parse("2026-03-02T14:05:00+01:00"),
                sent.time("at").orElseThrow());
        assertEquals(LocalDate.of(2026, 12, 31), sent.date("day").orElseThrow());
        assertArrayEquals(new double[] {1, 2.5}, sent.numbers("v").orElseThrow());
        assertTrue(sent.text("none", 5).isEmpty());
        assertTrue(sent.number("absent").isEmpty());
        assertEquals(0, sent.faults().count());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "``            | thing     | empty",
                "`  `          | thing     | empty",
                "{\"a\": 1     | thing:1:  | cut short",
                "{\"a\": [1,   | thing:1:  | cut short",
                "{\"a\" 1}     | thing:1:  | is not JSON",
                "{\"a\": 1, \"a\": 2} | thing:1: | twice",
                "{} {}         | thing:1:  | follows",
                "{\"a\": 01}   | thing:1:  | is not JSON",
                "[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]] | thing | depth",
                "{\"a\": 1111111111111111111111111111111111111111111111111111111111111111111} | thing | length"
            })
    void refusesWhatIsNotJson(String json, String where, String words) {
        IntakeException refused = assertThrows(IntakeException.class, () -> read(json));
        assertEquals(Kind.MALFORMED, refused.kind());
        Fault fault = refused.faults().get(0);
        assertTrue(fault.where().startsWith(where), fault::where);
        assertTrue(fault.message().contains(words), fault::message);
    }

    @ParameterizedTest
    @CsvSource({
        "89504e470d0a1a0a0000000d, a PNG picture",
        "ffd8ffe000104a464946, a JPEG picture",
        "255044462d312e37, a PDF document",
        "504b030414000000, a ZIP file",
        "0001020304, a binary file"
    })
    void saysWhatWasSentInsteadOfJson(String hex, String words) {
        IntakeException refused = assertThrows(
                IntakeException.class,
                () -> SentObject.read("thing", HexFormat.of().parseHex(hex), new Faults()));
        assertEquals(Kind.MALFORMED, refused.kind());
        assertEquals("thing", refused.faults().get(0).where());
        String message = refused.faults().get(0).message();
        assertTrue(
                message.startsWith("is " + words)
                        && message.endsWith("not a JSON document; send one JSON object, as text in UTF-8"),
                message);
    }

    /** Whatever is wrong, the message is ours: it shows the place, and nothing of how the parser works. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"a\" 1}             | is not JSON at '{\"a\" 1}'",
                "{\"a\": 1,}           | is not JSON at '{\"a\": 1,}'",
                "{\"a\": tru}          | is not JSON at '{\"a\": tru}'",
                "{\"a\": \"x}          | ends before it is complete",
                "{\"key\": 1, \"key\": 2} | the key 'key' stands twice in one object; give it once",
                "{'a': 1}              | is not JSON at '{'a': 1}'"
            })
    void speaksItsOwnWords(String json, String words) {
        String message = assertThrows(IntakeException.class, () -> read(json))
                .faults()
                .get(0)
                .message();
        assertTrue(message.contains(words), message);
        for (String internal : List.of("expecting", "code ", "CTRL-CHAR", "token", "Stream", "Source", "Duplicate")) {
            assertTrue(!message.contains(internal), message);
        }
    }

    @Test
    void refusesBrokenUtf8() {
        byte[] latin1 = "{\"technician\": \"Zo\u00eb\"}".getBytes(StandardCharsets.ISO_8859_1);
        IntakeException refused =
                assertThrows(IntakeException.class, () -> SentObject.read("thing", latin1, new Faults()));
        assertEquals(Kind.MALFORMED, refused.kind());
        assertTrue(refused.getMessage().contains("UTF-8"), refused::getMessage);
    }

    @Test
    void refusesADocumentThatIsNoObject() {
        IntakeException refused = assertThrows(IntakeException.class, () -> read("[1]"));
        assertEquals(Kind.CONTENT, refused.kind());
    }

    @Test
    void namesTheNearestKeyForAnUnknownOne() {
        assertFault(
                "/tempertaure",
                "did you mean 'temperature'?",
                only("{\"tempertaure\": 1}", sent -> sent.allow("length", "temperature")));
        assertFault(
                "/zzz",
                "known: length, temperature",
                only("{\"zzz\": 1}", sent -> sent.allow("length", "temperature")));
    }

    @Test
    void namesEveryMissingKey() {
        SentObject sent = read("{\"b\": null}");
        sent.require("a", "b");
        IntakeException refused =
                assertThrows(IntakeException.class, () -> sent.faults().refuseIfAny());
        assertEquals(
                List.of("/a", "/b"), refused.faults().stream().map(Fault::where).toList());
    }

    @Test
    void refusesNumbersThatAreNotFiniteWithTheirPlace() {
        assertFault("/v/1", "must be finite", only("{\"v\": [1, NaN]}", sent -> sent.numbers("v")));
        assertFault("/v/0", "must be finite", only("{\"v\": [-Infinity]}", sent -> sent.numbers("v")));
        assertFault("/n", "must be finite", only("{\"n\": 1e999}", sent -> sent.number("n")));
        assertFault("/v/0", "a number, not null", only("{\"v\": [null]}", sent -> sent.numbers("v")));
        assertFault("/v/0", "not the text 'NaN'", only("{\"v\": [\"NaN\"]}", sent -> sent.numbers("v")));
    }

    @Test
    void refusesWhatHasTheWrongShape() {
        assertFault("/n", "a number, not the text '1'", only("{\"n\": \"1\"}", sent -> sent.number("n")));
        assertFault("/w", "from 1 to 4, not '1.5'", only("{\"w\": 1.5}", sent -> sent.whole("w", 1, 4)));
        assertFault("/w", "from 1 to 4, not '5'", only("{\"w\": 5}", sent -> sent.whole("w", 1, 4)));
        assertFault("/t", "text, not the number '1'", only("{\"t\": 1}", sent -> sent.text("t", 5)));
        assertFault("/t", "must not be empty", only("{\"t\": \" \"}", sent -> sent.text("t", 5)));
        assertFault("/t", "has 6 characters", only("{\"t\": \"123456\"}", sent -> sent.text("t", 5)));
        assertFault("/t", "control", only("{\"t\": \"a\\u0000b\"}", sent -> sent.text("t", 5)));
        assertFault("/t", "broken", only("{\"t\": \"\\ud800x\"}", sent -> sent.text("t", 5)));
        assertFault("/o", "an object", only("{\"o\": [1]}", sent -> sent.object("o")));
        assertFault("/o/1", "an object", only("{\"o\": [{}, 1]}", sent -> sent.objects("o")));
        assertFault("/o", "an array", only("{\"o\": {}}", sent -> sent.objects("o")));
        assertFault("/at", "with its offset", only("{\"at\": \"2026-03-02 14:05\"}", sent -> sent.time("at")));
        assertFault("/day", "a day", only("{\"day\": \"31.12.2026\"}", sent -> sent.date("day")));
        assertFault("/l/unit", "missing", only("{\"l\": {\"value\": 1}}", sent -> sent.quantity("l", Length::of)));
        assertFault(
                "/l",
                "must be positive",
                only("{\"l\": {\"value\": -1, \"unit\": \"m\"}}", sent -> sent.quantity("l", Length::of)));
        assertFault("/i", "cannot be an identifier", only("{\"i\": \"a/b\"}", sent -> sent.identifier("i")));
    }

    @Test
    void escapesKeysInPointers() {
        assertFault("/a~1b~0c", "a number", only("{\"a/b~c\": true}", sent -> sent.number("a/b~c")));
    }

    @Test
    void listsTheFirstFiftyFaultsAndCountsTheRest() {
        SentObject sent = read("{\"v\": [" + "null,".repeat(59) + "null]}");
        sent.numbers("v");
        IntakeException refused =
                assertThrows(IntakeException.class, () -> sent.faults().refuseIfAny());
        assertEquals(50, refused.faults().size());
        assertEquals(10, refused.unlisted());
        assertTrue(refused.getMessage().startsWith("60 faults, of which the first 50 are listed"));
    }

    @ParameterizedTest
    @CsvSource({"IC-2210-3", "R.1_a", "4", "' HD6A-4P '"})
    void takesIdentifiers(String text) {
        assertEquals(text.trim(), Identifier.of(text));
    }

    @ParameterizedTest
    @CsvSource({"''", "a/b", ".", "..", "-a", "a b", "é", "a:b"})
    void refusesWhatIsNoIdentifier(String text) {
        assertThrows(IllegalArgumentException.class, () -> Identifier.of(text));
        assertThrows(IllegalArgumentException.class, () -> Identifier.of("a".repeat(65)));
    }
}
