package dev.reelproof.intake.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.digest.Sha256;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.Part;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class UploadTest {

    private static Part part(String name, String text) {
        return new Part(name, "text/plain", text.getBytes(StandardCharsets.UTF_8));
    }

    /** Published: FIPS 180-2, appendix B.1 (the message "abc"), from memory. */
    @Test
    void digestsTheDocumentAloneAsItsBytes() {
        String abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assertEquals(abc, part("x", "abc").sha256());
        assertEquals(abc, Upload.ofDocument(new byte[] {'a', 'b', 'c'}).sha256());
        assertEquals(abc, new Upload(List.of(part("result", "abc"))).sha256());
    }

    @Test
    void digestsSeveralPartsWhateverTheirOrder() {
        Part result = part("result", "{}");
        Part one = part("one.csv", "1");
        Part two = part("two.csv", "2");
        String digest = new Upload(List.of(result, one, two)).sha256();
        assertEquals(digest, new Upload(List.of(two, result, one)).sha256());
        assertEquals(
                digest, new Upload(List.of(result, new Part("one.csv", "text/csv", new byte[] {'1'}), two)).sha256());
        assertNotEquals(digest, new Upload(List.of(result, one)).sha256());
        assertNotEquals(digest, new Upload(List.of(result, part("one.csv", "2"), part("two.csv", "1"))).sha256());
        List<String> lines =
                List.of(one.sha256() + "  one.csv\n", two.sha256() + "  two.csv\n", result.sha256() + "  result\n");
        assertEquals(Sha256.hex(String.join("", lines.stream().sorted().toList())), digest);
    }

    /** A part may have fifty megabytes, and its digest is asked for several times on its way. */
    @Test
    void digestsAPartOnce() {
        Part part = part("result", "abc");
        assertSame(part.sha256(), part.sha256());
        assertSame(part.sha256(), new Upload(List.of(part)).sha256());
    }

    @Test
    void keepsItsBytesFromChange() {
        byte[] bytes = {'{', '}'};
        Part part = new Part("result", "application/json", bytes);
        bytes[0] = 'x';
        part.bytes()[0] = 'y';
        assertEquals(new Part("result", "application/json", new byte[] {'{', '}'}), part);
        assertEquals(new Part("result", "application/json", new byte[] {'{', '}'}).hashCode(), part.hashCode());
        assertNotEquals(new Part("result", "application/json", new byte[] {'{'}), part);
        assertNotEquals(new Part("other", "application/json", new byte[] {'{', '}'}), part);
    }

    @Test
    void needsExactlyOneDocumentAndNamesOfItsOwn() {
        assertRefused("'result' is missing", List.of(part("one.csv", "1")));
        assertRefused("'result' is missing", List.of());
        assertRefused("'result'; each part", List.of(part("result", "{}"), part("result", "{}")));
        assertRefused("'a.csv'; each part", List.of(part("result", "{}"), part("a.csv", "1"), part("a.csv", "2")));
    }

    private static void assertRefused(String words, List<Part> parts) {
        IntakeException refused = assertThrows(IntakeException.class, () -> new Upload(parts));
        assertEquals(Kind.MALFORMED, refused.kind());
        assertTrue(refused.getMessage().contains(words), refused::getMessage);
    }

    @Test
    void refusesNamesThatCouldForgeALine() {
        assertThrows(IntakeException.class, () -> part("a\nb", ""));
        assertThrows(IntakeException.class, () -> part("", ""));
        assertThrows(IntakeException.class, () -> part("x".repeat(201), ""));
    }
}
