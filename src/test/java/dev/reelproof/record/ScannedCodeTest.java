package dev.reelproof.record;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.intake.Identifier;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScannedCodeTest {

    /** What a scanner may send of a label that says R-100; · stands for Tab, ¶ for Enter, § for the separator of GS1. */
    @ParameterizedTest
    @CsvSource({
        "R-100,R-100",
        "R-100·,R-100",
        "R-100¶,R-100",
        "]C1R-100,R-100",
        "]C0R-100·,R-100",
        "]A0R-100¶,R-100",
        "]A0*R-100*,R-100",
        "*R-100*,R-100",
        "]d2§R-100,R-100",
        "]Q3R-100§¶,R-100",
        "]F0A4711B,4711",
        "]F0a4711d·,4711",
        "]F4 4711,4711",
    })
    void whatAScannerPutsAroundANumberIsTakenAway(String sent, String number) {
        assertEquals(
                number,
                ScannedCode.of(sent.replace('·', '\t').replace('¶', '\n').replace('§', '\u001d')));
    }

    /** A number may begin and end with these letters, and may hold what is no frame. */
    @ParameterizedTest
    @CsvSource({"A4711B,A4711B", "AB*C*D,AB*C*D", "*R-100,*R-100", "]C1,]C1", "],]", "]100,]100", "R]C1,R]C1"})
    void whatIsNoMarkOfAScannerStays(String sent, String same) {
        assertEquals(same, ScannedCode.of(sent));
    }

    @org.junit.jupiter.api.Test
    void aCharacterThatNoScannerSendsStaysAndIsRefusedElsewhere() {
        assertEquals("R\u0000", ScannedCode.of("R\u0000\t"));
    }

    @Property
    void aNumberThatCanBeOneComesBackAsItIs(@ForAll("identifiers") String number) {
        assertEquals(Identifier.of(number), ScannedCode.of(number));
        assertEquals(number, ScannedCode.of("]C1" + number + "\t"));
        assertEquals(number, ScannedCode.of("]A0*" + number + "*\r\n"));
    }

    @Provide
    Arbitrary<String> identifiers() {
        Arbitrary<String> first = Arbitraries.strings().alpha().numeric().ofLength(1);
        Arbitrary<String> rest =
                Arbitraries.strings().alpha().numeric().withChars("._-").ofMaxLength(63);
        return first.flatMap(one -> rest.map(more -> one + more));
    }
}
