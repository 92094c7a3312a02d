package dev.reelproof.certificate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.measurement.LengthMarks;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a certificate must state and nobody has stated. */
class CompletenessTest {
    private static final LengthMarks MARKS = new LengthMarks(4101, 5101, "ft");

    private static Declaration declared(CertificateType type, boolean needsLengthMarks) {
        return new Declaration(
                type,
                Locale.ENGLISH,
                Declaration.Sheet.A4,
                Declaration.UnitSystem.BOTH,
                new Declaration.Signatory("A. Example", "quality manager"),
                needsLengthMarks);
    }

    private static List<String> missing(
            CertificateType type, boolean needsLengthMarks, @Nullable LengthMarks lengthMarks) {
        return Completeness.missing(
                declared(type, needsLengthMarks),
                CertificateSamples.markedItem(lengthMarks),
                CertificateSamples.conditions());
    }

    @ParameterizedTest
    @EnumSource
    void lengthMarksAreMissingWhereThePlantAsksForThemOnly(CertificateType type) {
        assertEquals(List.of("the length marks of the reel"), missing(type, true, null));
        assertEquals(List.of(), missing(type, true, MARKS));
        assertEquals(List.of(), missing(type, false, null));
    }

    @Test
    void aCertificateOfThePlantsOwnKindLacksNothing() {
        Item bare = new Item("R-1", 305, "m", CertificateSamples.item().length(), null, null, null, null);
        assertEquals(List.of(), Completeness.missing(Declaration.PLAIN, bare, CertificateSamples.conditions()));
        assertEquals(
                List.of("the customer", "the order", "the length marks of the reel"),
                Completeness.missing(
                        declared(CertificateType.INSPECTION_CERTIFICATE_3_1, true),
                        bare,
                        CertificateSamples.conditions()));
    }
}
