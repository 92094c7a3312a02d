package dev.reelproof.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Length marks refuse what no jacket carries, and are held against the registered length. */
class LengthMarksTest {

    private static void refused(String words, Executable making) {
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, making);
        assertTrue(refusal.getMessage().contains(words), refusal.getMessage());
    }

    @Test
    void marksRefuseWhatCannotBe() {
        refused("first length mark", () -> new LengthMarks(Double.NaN, 305, "m"));
        refused("last length mark", () -> new LengthMarks(0, Double.NaN, "m"));
        refused("0 or more", () -> new LengthMarks(-1, 305, "m"));
        refused("0 or more", () -> new LengthMarks(305, -0.5, "m"));
        refused("finite", () -> new LengthMarks(0, Double.POSITIVE_INFINITY, "m"));
        refused("unknown unit of length", () -> new LengthMarks(0, 305, "dB"));
        refused("unknown unit of length", () -> new LengthMarks(0, 305, "yard"));
        refused("between two marks", () -> new LengthMarks(305, 305, "m"));
    }

    @Test
    void marksStandInAnyOrder() {
        assertEquals(305, new LengthMarks(1250, 1555, "m").span().metres(), 1e-9);
        assertEquals(305, new LengthMarks(1555, 1250, "m").span().metres(), 1e-9);
        assertEquals(304.8, new LengthMarks(0, 1000, "ft").span().metres(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        // 1 % of 305 m is 3.05 m.
        "0, 308.05, m, 305, m, true",
        "0, 308.06, m, 305, m, false",
        "0, 301.95, m, 305, m, true",
        "0, 301.94, m, 305, m, false",
        // Of 50 m it is half a metre; a metre is more.
        "100, 151, m, 50, m, true",
        "100, 151.01, m, 50, m, false",
        "149, 100, m, 50, m, true",
        "148.99, 100, m, 50, m, false",
        // 3 ft of 100 ft, less than a metre.
        "500, 603, ft, 100, ft, true",
        "500, 603.01, ft, 100, ft, false",
        "597, 500, ft, 100, ft, true",
        "596.99, 500, ft, 100, ft, false",
        // Feet on the jacket, metres in the order.
        "4101, 5102, ft, 305, m, true",
        "4101, 5002, ft, 305, m, false",
        "1.25, 1.555, km, 305, m, true",
    })
    void marksAgreeWithTheLengthWithinOnePerCentOrAMetre(
            double first, double last, String unit, double length, String lengthUnit, boolean agree) {
        assertEquals(agree, new LengthMarks(first, last, unit).agreeWith(Length.of(length, lengthUnit)));
    }

    @Property
    void theOrderOfTheMarksDoesNotMatter(
            @ForAll @DoubleRange(min = 0, max = 99_999) double first,
            @ForAll @DoubleRange(min = 0.1, max = 5000) double metres,
            @ForAll @DoubleRange(min = 0.1, max = 5000) double registered) {
        Length length = Length.ofMetres(registered);
        assertEquals(
                new LengthMarks(first, first + metres, "m").agreeWith(length),
                new LengthMarks(first + metres, first, "m").agreeWith(length));
    }
}
