package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BoundedLinesTest {
    private static final String MARK = "\u00EF\u00BB\u00BF";

    private static List<String> lines(InputStream in) throws IOException {
        BoundedLines lines = new BoundedLines("x.s4p", in);
        List<String> all = new ArrayList<>();
        for (String line = lines.next(); line != null; line = lines.next()) {
            all.add(line);
            assertEquals(all.size(), lines.number());
        }
        return all;
    }

    private static List<String> lines(String text) throws IOException {
        return lines(new ByteArrayInputStream(text.getBytes(StandardCharsets.ISO_8859_1)));
    }

    @Test
    void linesEndInAnyOfTheThreeWays() throws IOException {
        assertEquals(List.of("a", "b", "c", "", "", "d"), lines("a\nb\r\nc\r\r\n\nd"));
        assertEquals(List.of("a"), lines("a\r"));
        assertEquals(List.of(), lines(""));
    }

    @Test
    void aMarkOfUtf8IsNoPartOfTheFirstLineAndOnlyAWholeOneIsAMark() throws IOException {
        assertEquals(List.of("", MARK + "b"), lines(MARK + "\n" + MARK + "b"));
        assertEquals(List.of("a" + MARK), lines("a" + MARK));
        assertEquals(List.of("\u00EF\u00BB"), lines("\u00EF\u00BB"));
        assertEquals(List.of("\u00EF\u00BBxy"), lines("\u00EF\u00BBxy"));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 65_536})
    void nothingIsLostWhereOneReadEndsAndTheNextBegins(int most) throws IOException {
        List<String> written = new ArrayList<>();
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 30_000; i++) {
            written.add("line " + i);
            text.append("line ").append(i).append("\r\n");
        }
        InputStream in = new ByteArrayInputStream(text.toString().getBytes(StandardCharsets.US_ASCII)) {
            @Override
            public synchronized int read(byte[] bytes) {
                return read(bytes, 0, Math.min(most, bytes.length));
            }
        };
        assertEquals(written, lines(in));
    }

    @Test
    void theLongestLineIsStillRead() throws IOException {
        String longest = "7".repeat(BoundedLines.LONGEST_LINE);
        assertEquals(List.of("a", longest), lines("a\n" + longest + "\n"));
        NetworkException refused = assertThrows(NetworkException.class, () -> lines("a\n" + longest + "7\n"));
        assertEquals("x.s4p:2", refused.where());
    }
}
