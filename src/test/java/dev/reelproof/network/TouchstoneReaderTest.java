package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TouchstoneReaderTest {
    private static final double ROUNDING = 1e-15;

    private static final String V2 =
            "[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n"
                    + "[Number of Frequencies] 2\n[Network Data]\n1 .1 0 .2 0 .3 0 .4 0\n2 .1 0 .2 0 .3 0 .4 0\n[End]\n";

    private static NetworkData read(String file, String text) {
        try {
            return new TouchstoneReader()
                    .read(file, 4, new ByteArrayInputStream(text.getBytes(StandardCharsets.ISO_8859_1)));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void assertEntry(double re, double im, NetworkData data, int index, int row, int column) {
        assertEquals(re, data.matrix(index).re(row - 1, column - 1), ROUNDING);
        assertEquals(im, data.matrix(index).im(row - 1, column - 1), ROUNDING);
    }

    @Test
    void readsFourPortsWrappedAsTheyAreCommonlyWritten() {
        NetworkData data = read(
                "x.s4p",
                "! a comment\n# MHz S RI R 50\n1 11 0 12 0 13 0 14 0 ! first row\n  21 0 22 0 23 0 24 0\n"
                        + " 31 0 32 0 33 0 34 -1\n\n! between\n 41 0 42 0 43 0 44 0\n");
        assertEquals("Touchstone 1, S in RI, MHz", data.words());
        assertEquals(4, data.ports());
        assertEquals(1, data.size());
        assertEquals(3, data.line(0));
        assertEntry(34, -1, data, 0, 3, 4);
        assertEntry(21, 0, data, 0, 2, 1);
        assertEquals(50, data.referenceOhm()[3]);
    }

    @Test
    void wrappingAndLineEndsMakeNoDifference() {
        String wrapped = "# MHz S RI R 50\r1\t1 0 2 0\r3 0 4 0\r2 1 0\r2 0\r3 0 4 0 ! end";
        String plain = "\u00EF\u00BB\u00BF# MHz S RI R 50\r\n1 1 0 2 0 3 0 4 0\r\n2 1 0 2 0 3 0 4 0\r\n";
        NetworkData one = read("x.s2p", wrapped);
        NetworkData other = read("x.s2p", plain);
        assertEquals(2, one.size());
        for (int i = 0; i < 2; i++) {
            for (int row = 0; row < 2; row++) {
                for (int column = 0; column < 2; column++) {
                    assertEquals(one.matrix(i).re(row, column), other.matrix(i).re(row, column));
                }
            }
        }
        assertEquals(4, one.line(1));
        assertEquals(3, other.line(1));
    }

    @Test
    void versionOneHasColumnsFirstOfTwoPortsAndVersionTwoSays() {
        NetworkData one = read("x.s2p", "# MHz S RI R 50\n1 .11 0 .21 0 .12 0 .22 0\n");
        assertEntry(.21, 0, one, 0, 2, 1);
        NetworkData rows = read("x.s2p", V2);
        assertEquals("Touchstone 2.0, S in RI, MHz", rows.words());
        assertEntry(.2, 0, rows, 0, 1, 2);
        NetworkData columns = read("x.ts", V2.replace("12_21", "21_12"));
        assertEntry(.2, 0, columns, 0, 2, 1);
    }

    @ParameterizedTest
    @CsvSource({"Hz, 1000000", "kHz, 1000", "MHZ, 1", "ghz, 0.001"})
    void readsEveryUnitOfFrequency(String unit, String frequency) {
        assertEquals(
                1,
                read("x.s1p", "# " + unit + " S RI R 50\n" + frequency + " .1 0\n")
                        .megahertz(0));
    }

    @Test
    void readsMagnitudesAndDecibelsWithAnglesInDegrees() {
        assertEntry(0, .5, read("x.s1p", "# MHz S MA R 50\n1 .5 90\n"), 0, 1, 1);
        assertEntry(-.1, 0, read("x.s1p", "# MHz S DB R 50\n1 -20 180\n"), 0, 1, 1);
    }

    @Test
    void theOptionLineHasDefaultsAndAnyOrderAndCountsOnce() {
        NetworkData data = read("x.s1p", "#\n1 .5 0\n# Hz S RI R 75\n2 .5 0\n");
        assertEquals(1000, data.megahertz(0));
        assertEquals(50, data.referenceOhm()[0]);
        NetworkData turned = read("x.s1p", "# r 75 ri s khz\n1 .5 .25\n");
        assertEquals(0.001, turned.megahertz(0));
        assertEquals(75, turned.referenceOhm()[0]);
        assertEntry(.5, .25, turned, 0, 1, 1);
    }

    @Test
    void takesHalfOfASymmetricMatrix() {
        String head = "[Version] 2.0\n# MHz S RI\n[Number of Ports] 3\n[Reference] 50 60\n 75 ! on two lines\n";
        String lower = head + "[Matrix Format] Lower\n[Network Data]\n1 11 -1\n21 -2 22 -3\n31 -4 32 -5 33 -6\n[End]";
        String upper = head + "[Matrix Format] Upper\n[Network Data]\n1 11 -1 21 -2 31 -4\n22 -3 32 -5\n33 -6\n[End]";
        for (String text : List.of(lower, upper)) {
            NetworkData data = read("x.ts", text);
            assertEntry(21, -2, data, 0, 1, 2);
            assertEntry(21, -2, data, 0, 2, 1);
            assertEntry(32, -5, data, 0, 3, 2);
            assertEntry(32, -5, data, 0, 2, 3);
            assertEntry(33, -6, data, 0, 3, 3);
            assertEquals(75, data.referenceOhm()[2]);
        }
    }

    @Test
    void passesNoiseAndInformationOver() {
        NetworkData one = read("x.s2p", "# MHz S RI R 50\n5 1 0 2 0 3 0 4 0\n4 .7 .64 69 .38\n6 .7 .64 69 .38\n");
        assertEquals(1, one.size());
        assertEquals(List.of("The noise data of x.s2p from line 3 were passed over."), one.warnings());
        NetworkData two = read(
                "x.ts",
                V2.replace(
                                "[Network Data]",
                                "[Begin Information]\n[Anything] at all\n[End Information]\n[Network Data]")
                        .replace("[End]\n", "[Noise Data]\n4 .7 .64 69 .38\n[End]\n"));
        assertEquals(2, two.size());
        assertEquals(1, two.warnings().size());
    }

    @Test
    void takesThePortsOfTheMapWhereNothingElseSaysThem() {
        assertEquals(
                4,
                read("x.txt", "# MHz S RI R 50\n1" + " 0 0".repeat(16) + "\n").ports());
    }

    @Test
    void aFileMayHaveSixtyFourPorts() {
        NetworkData data = read("x.s64p", "# MHz S RI R 50\n1" + " 0 0".repeat(64 * 64 - 1) + " .5 .25\n");
        assertEquals(64, data.ports());
        assertEntry(.5, .25, data, 0, 64, 64);
    }

    /** A file that cannot be: its name, its text, the line that is wrong and what is said of it. */
    record Broken(String file, String text, int line, String words) {
        @Override
        public String toString() {
            return words;
        }
    }

    private static Broken order(String entries, String words) {
        return new Broken(
                "x.ts", V2.replace("[Network Data]", "[Mixed-Mode Order] " + entries + "\n[Network Data]"), 6, words);
    }

    static Stream<Broken> broken() {
        String row = "1 1 0 2 0 3 0 4 0\n";
        String head = "# MHz S RI R 50\n";
        return Stream.of(
                new Broken("x.s2p", "! nothing else\n" + row, 2, "option line is missing"),
                new Broken("x.s2p", "! nothing\n", 1, "without an option line"),
                new Broken("x.s2p", "", 1, "without an option line"),
                new Broken("x.s2p", head, 1, "no network data"),
                new Broken("x.s2p", "# MHz Y RI R 50\n" + row, 1, "export S-parameters"),
                new Broken("x.s2p", "# MHz S XY R 50\n" + row, 1, "'XY'"),
                new Broken("x.s2p", "# MHz S RI R\n" + row, 1, "ends after 'R'"),
                new Broken("x.s2p", "# MHz S RI R 0\n" + row, 1, "positive resistance"),
                new Broken("x.s2p", "# MHz S RI R 50 75\n" + row, 1, "more than one reference"),
                new Broken("x.s0p", head + row, 1, "0 ports"),
                new Broken("x.s65p", head + row, 1, "65 ports"),
                new Broken("x.s2p", head + "1 1 0 2 0 3 0 4\n", 2, "odd count: a frequency and pairs"),
                new Broken("x.s2p", head + "1 1 0 2 0\n3 0 4\n", 3, "an odd count of numbers (3) stands within"),
                new Broken("x.s2p", head + "1 1 0 2 0 3 0 4 0 5 0\n", 2, "is the file of more ports?"),
                new Broken("x.s8p", head + "1" + " 1 0".repeat(16) + "\n2 1 0\n", 3, "those of 4 ports"),
                new Broken("x.s2p", head + row + "1 1 0 2 0 3 0 4 0\n", 3, "not above the one before (line 2)"),
                new Broken("x.s4p", head + "2" + " 1 0".repeat(16) + "\n1" + " 1 0".repeat(16) + "\n", 3, "ascend"),
                new Broken("x.s2p", head + "-1 1 0 2 0 3 0 4 0\n", 2, "'-1' MHz is -1.0 MHz"),
                new Broken("x.s1p", "# GHz S RI R 50\n1e306 1 0\n", 2, "is Infinity MHz; frequencies are finite"),
                new Broken("x.s2p", head + "1 1 0 2e200 0 3 0 4 0\n", 2, "entry 2 of the matrix that ends here"),
                new Broken("x.s2p", head + "1 1 0 2 -1e7 3 0 4 0\n", 2, "the magnitude 1.0E7"),
                new Broken("x.s1p", "# MHz S MA R 50\n1 1e7 0\n", 2, "the magnitude 1.0E7"),
                new Broken("x.s1p", "# MHz S DB R 50\n1 121 0\n", 2, "the magnitude 121.0 dB"),
                new Broken("x.s1p", "# MHz S DB R 50\n1 1e5 0\n", 2, "the magnitude 100000.0 dB"),
                new Broken("x.s2p", "# MHz S RI R 1e300\n" + row, 1, "0.001 to 1000000.0, not '1e300'"),
                new Broken("x.s2p", "# MHz S RI R 1e-300\n" + row, 1, "not '1e-300'"),
                new Broken("x.s2p", head + "1 1 0 NaN 0 3 0 4 0\n", 2, "'NaN' is not a finite number"),
                new Broken("x.s2p", head + "1 1 0 Infinity 0 3 0 4 0\n", 2, "'Infinity'"),
                new Broken("x.s2p", head + "1 1 0 1e999 0 3 0 4 0\n", 2, "'1e999'"),
                new Broken("x.s2p", head + "1 1 0 0x1p3 0 3 0 4 0\n", 2, "'0x1p3'"),
                new Broken("x.s2p", head + "1 1,0 2 0 3 0 4 0 9\n", 2, "'1,0'"),
                new Broken("x.s1p", "# MHz S MA R 50\n1 -.5 0\n", 2, "magnitude"),
                new Broken("x.s2p", head + row + "2 1 0 2 0\n", 3, "was the file cut short"),
                new Broken("x.s2p", head + "[Number of Ports] 2\n" + row, 2, "needs [Version] 2.0"),
                new Broken("x.ts", V2.replace("2.0", "3.0"), 1, "'3.0'"),
                new Broken("x.ts", "# MHz S RI\n" + V2, 2, "first line"),
                new Broken("x.s4p", V2, 3, "the file's name says 4"),
                new Broken("x.ts", V2.replace("[Number of Ports] 2", "[Number of Ports] 3"), 8, "not of 3 ports"),
                new Broken("x.ts", V2.replace("[Number of Ports] 2", "[Number of Ports] two"), 3, "whole number"),
                new Broken("x.ts", V2.replace("[Number of Ports] 2\n", ""), 5, "[Number of Ports] is missing"),
                new Broken("x.ts", V2.replace("[Two-Port Data Order] 12_21\n", ""), 5, "12_21 or 21_12"),
                new Broken("x.ts", V2.replace("12_21", "12"), 4, "12_21 or 21_12"),
                new Broken("x.ts", V2.replace("[Number of Frequencies] 2", "[Number of Frequencies] 3"), 9, "is 3"),
                new Broken("x.ts", V2.replace("[End]\n", ""), 8, "without [End]"),
                new Broken("x.ts", V2 + "1 2 3\n", 10, "follows [End]"),
                new Broken("x.ts", V2.replace("[Network Data]\n", ""), 6, "before [Network Data]"),
                new Broken("x.ts", V2.replace("[Network Data]", "[Reference] 50\n[Network Data]"), 7, "lacks 1"),
                new Broken(
                        "x.ts",
                        V2.replace("[Network Data]", "[Reference] 50 50 50\n[Network Data]"),
                        6,
                        "more than one"),
                order("D1,2", "has 1 entries for 2 ports"),
                order("D1,2 C1,2 S1", "has 3 entries for 2 ports"),
                order("", "has 0 entries for 2 ports"),
                order("D1,2 D1,2", "names port 1 in D1,2 and in D1,2"),
                order("D1,2 C2,1", "names port 2 in D1,2 and in C2,1"),
                order("S1 S1", "names port 1 in S1 and in S1"),
                order("S1 D1,2", "names port 1 in S1 and in D1,2"),
                order("D1,2 C1,3", "names port 3 in 'C1,3'; the file has ports 1 to 2"),
                order("D1,1 C1,1", "names port 1 twice in 'D1,1'"),
                order("S0 S1", "names port 0"),
                order("S1,2 S2", "entry 'S1,2'"),
                order("D1 C1", "entry 'D1'"),
                order("E1,2 C1,2", "entry 'E1,2'"),
                new Broken(
                        "x.ts",
                        V2.replace("[Network Data]", "[Mixed-Mode Order] D1,2 C1,2\n[Reference] 50 75\n[Network Data]"),
                        8,
                        "ports 1 and 2 of D1,2 have the reference impedances 50.0 and 75.0 ohm"),
                new Broken(
                        "x.ts",
                        V2.replace("[Number of Ports]", "[Mixed-Mode Order] D1,2 C1,2\n[Number of Ports]"),
                        3,
                        "[Number of Ports] is missing"),
                new Broken("x.ts", V2.replace("[Network Data]", "[Matrix Format] Half\n[Network Data]"), 6, "'Half'"),
                new Broken("x.ts", V2.replace("[Network Data]", "[Nonsense] 1\n[Network Data]"), 6, "[Nonsense]"),
                new Broken("x.ts", V2.replace("[Network Data]", "[Number of Ports] 2\n[Network Data]"), 6, "twice"),
                new Broken("x.ts", V2.replace("\n2 .1", "\n[Matrix Format] Lower\n2 .1"), 8, "after data"),
                new Broken("x.ts", V2.replace(".2 0 .3", ".2 0\n[Matrix Format] Lower\n.3"), 8, "after data"),
                new Broken("x.ts", V2.replace("\n2 .1", "\n[Reference] 75 75\n2 .1"), 8, "after data"),
                new Broken("x.ts", V2.replace("[Network Data]", "[Noise Data]\n[Network Data]"), 7, "after data"),
                new Broken(
                        "x.ts",
                        V2.replace("[Network Data]", "[Two-Port Order] 21_12\n[Network Data]"),
                        6,
                        "[Two-Port Order] stands twice; it was given on line 4"),
                new Broken("x.ts", V2.replace("[Network Data]", "[Network Data"), 6, "no ']'"),
                new Broken("x.ts", V2.replace("Ports] 2", "Ports] 65"), 3, "[Number of Ports] says 65 ports; 1 to 64"),
                new Broken(
                        "x.ts",
                        V2.replace("[Number of Ports]", "[Reference] 50 50\n[Number of Ports]"),
                        3,
                        "[Number of Ports] is missing; it must stand before [Reference]"),
                new Broken("x.ts", V2.replace("# MHz S RI R 50\n", ""), 5, "option line is missing"),
                new Broken("x.ts", "[Version] 2.0\n# MHz S\n[Number of Ports] 2\n[Reference] 50 ! one\n", 4, "lacks 1"),
                new Broken("x.ts", "[Version] 2.0\n[Version] 2.0\n", 2, "and stand once"),
                new Broken(
                        "x.ts",
                        V2.replace("2 .1 0 .2 0 .3 0 .4 0\n[End]", "2 .1 0 .2 0\n[End]\n! cut"),
                        9,
                        "after 2 of its 4 entries; was the file cut short"),
                new Broken(
                        "x.ts",
                        V2.replace("2 .1 0 .2 0 .3 0 .4 0\n[End]", "2 .1 0\n[Noise Data]\n[End]"),
                        9,
                        "after 1 of its 4 entries; was the file cut short"),
                new Broken("x.s2p", head + "1 1 0 2 0 3 0\n4\n", 3, "began on line 2, after 3 of its 4 entries"),
                new Broken("x.s2p", head + "1 1 0 2 0 3 0\n4 0 5 0\n", 3, "more than the 4 entries that 2 ports have"),
                new Broken(
                        "x.s2p",
                        "#" + " R 50".repeat(2) + " " + "é".repeat(41) + "\n",
                        1,
                        "says '" + "?".repeat(40) + "…';"),
                new Broken("x.s2p", "# " + "é".repeat(40) + "\n", 1, "says '" + "?".repeat(40) + "';"));
    }

    @ParameterizedTest
    @MethodSource("broken")
    void refusesWhatCannotBeAndSaysWhere(Broken broken) {
        NetworkException refused = assertThrows(NetworkException.class, () -> read(broken.file, broken.text));
        assertTrue(refused.getMessage().contains(broken.words), refused::getMessage);
        assertEquals(broken.file + ":" + broken.line, refused.where(), refused::getMessage);
    }

    @Test
    void aFrequencyAloneOnItsLineTellsNothingOfThePorts() {
        NetworkException refused =
                assertThrows(NetworkException.class, () -> read("x.s2p", "# MHz S RI R 50\n1\n.1 0 .2\n"));
        assertTrue(refused.getMessage().endsWith("or is the file not of 2 ports?"), refused::getMessage);
        assertEntry(.2, 0, read("x.s2p", "# MHz S RI R 50\n1\n.1 0 .2 0 .3 0 .4 0\n"), 0, 2, 1);
    }

    @Test
    void noiseMayBeginAtTheLastFrequencyAndNotAbove() {
        String network = "# MHz S RI R 50\n5 1 0 2 0 3 0 4 0\n";
        assertEquals(1, read("x.s2p", network + "5 .7 .64 69 .38\n").size());
        NetworkException refused =
                assertThrows(NetworkException.class, () -> read("x.s2p", network + "5.1 .7 .64 69 .38\n"));
        assertTrue(refused.getMessage().contains("the data end within the matrix"), refused::getMessage);
    }

    @Test
    void theEndsOfWhatANumberMayBeAreStillRead() {
        assertEntry(0, 0, read("x.s1p", "# MHz S MA R 0.001\n1 0 45\n"), 0, 1, 1);
        assertEntry(-1e6, 0, read("x.s1p", "# MHz S RI R 1e6\n1 -1e6 0\n"), 0, 1, 1);
        assertEquals(0, read("x.s1p", "# MHz S RI R 50\n0 .1 0\n").megahertz(0));
        String longest = "0." + "1".repeat(62);
        assertEntry(1.0 / 9, 0, read("x.s1p", "# MHz S RI R 50\n1 " + longest + " 0\n"), 0, 1, 1);
        NetworkException refused =
                assertThrows(NetworkException.class, () -> read("x.s1p", "# MHz S RI R 50\n1 " + longest + "1 0\n"));
        assertTrue(refused.getMessage().contains("is not a finite number"), refused::getMessage);
    }

    /** Bytes without end, so that only a reader that bounds what it holds comes back. */
    private static InputStream endless(String head, char repeated) {
        byte[] begin = head.getBytes(StandardCharsets.US_ASCII);
        return new InputStream() {
            private long given;

            @Override
            public int read() {
                return given < begin.length ? begin[(int) given++] : repeated;
            }

            @Override
            public int read(byte[] bytes, int offset, int length) {
                for (int i = 0; i < length; i++) {
                    bytes[offset + i] = (byte) read();
                }
                return length;
            }
        };
    }

    @ParameterizedTest
    @CsvSource({"'# MHz S RI R 50\n1 ', 7", "'# MHz S RI R 50\n!', x", "'', ' '"})
    void aLineWithoutEndIsRefused(String head, char repeated) {
        NetworkException refused = assertThrows(
                NetworkException.class, () -> new TouchstoneReader().read("x.s2p", 2, endless(head, repeated)));
        assertTrue(refused.getMessage().contains("longer than 262144"), refused::getMessage);
    }

    private static int size(TouchstoneReader reader, String file, String text) throws IOException {
        return reader.read(file, 4, new ByteArrayInputStream(text.getBytes(StandardCharsets.US_ASCII)))
                .size();
    }

    @Test
    void theFilesOfAnUploadAreBoundedTogether() throws IOException {
        // a matrix of two ports has 8 numbers, the lower half of one of three ports 12
        String full = "# MHz S RI R 50\n" + "1 .1 0 .2 0 .2 0 .1 0\n2 .1 0 .2 0 .2 0 .1 0\n";
        String half = "[Version] 2.0\n# MHz S RI R 50\n[Number of Ports] 3\n[Matrix Format] Lower\n[Network Data]\n"
                + "1 .1 0 .2 0 .1 0 .2 0 .2 0 .1 0\n[End]\n";
        TouchstoneReader reader = new TouchstoneReader(2 * 8 + 12 + 8);
        assertEquals(2, size(reader, "a.s2p", full));
        assertEquals(1, size(reader, "b.ts", half));
        NetworkException refused = assertThrows(NetworkException.class, () -> size(reader, "c.s2p", full));
        assertEquals(
                "the network files of the upload hold more than 36 numbers; send fewer frequencies or fewer ports",
                refused.getMessage());
        assertEquals("c.s2p:3", refused.where());
    }

    @Test
    void thousandsOfFrequenciesKeepTheirOwnLines() throws IOException {
        StringBuilder text = new StringBuilder("# MHz S RI R 50\n");
        for (int i = 1; i <= 5000; i++) {
            text.append(i).append(" .1 ").append(i).append("e-4\n");
        }
        NetworkData data = read("x.s1p", text.toString());
        assertEquals(5000, data.size());
        for (int i = 0; i < data.size(); i++) {
            assertEquals(i + 1, data.megahertz(i));
            assertEquals(i + 2, data.line(i));
            assertEntry(.1, (i + 1) * 1e-4, data, i, 1, 1);
        }
    }
}
