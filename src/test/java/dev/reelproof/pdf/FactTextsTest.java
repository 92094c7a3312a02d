package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.certificate.CertificateType;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.certificate.Declaration;
import dev.reelproof.certificate.Declaration.UnitSystem;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.wording.Catalogue;
import dev.reelproof.wording.Wording;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Length marks are printed as the jacket has them, and in the unit of the certificate's lengths where that is another. */
class FactTextsTest {
    private static FactTexts texts(@Nullable LengthMarks marks, UnitSystem units, String language) {
        Locale locale = Locale.forLanguageTag(language);
        CertificateContent content = CertificateSamples.of(4, 40)
                .content(
                        new Declaration(
                                CertificateType.TEST_CERTIFICATE, locale, Declaration.Sheet.A4, units, null, false),
                        Circumstances.NONE,
                        CertificateSamples.markedItem(marks));
        return new FactTexts(content, Wording.of(Catalogue.of(locale)));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // A foot is 0.3048 m: 4101 ft are 1249.9848 m, 5101 ft 1554.7848 m, 1250 m 4101.0499 ft, 1555 m
                // 5101.7061 ft.
                "1250   | 1555   | m   | METRIC       | 1250 to 1555 m",
                "1250   | 1555   | m   | BOTH         | 1250 to 1555 m",
                "1250   | 1555   | m   | US_CUSTOMARY | 1250 to 1555 m (4101.05 to 5101.71 ft)",
                "4101   | 5101   | ft  | METRIC       | 4101 to 5101 ft (1249.98 to 1554.78 m)",
                "4101   | 5101   | ft  | BOTH         | 4101 to 5101 ft (1249.98 to 1554.78 m)",
                "5101   | 4101   | ft  | US_CUSTOMARY | 5101 to 4101 ft",
                "4.1015 | 5.1015 | kft | US_CUSTOMARY | 4.1015 to 5.1015 kft (4101.5 to 5101.5 ft)",
                "0      | 305    | m   | BOTH         | 0 to 305 m",
            })
    void lengthMarksStandAsOnTheJacket(double first, double last, String unit, UnitSystem units, String printed) {
        assertEquals(
                printed, texts(new LengthMarks(first, last, unit), units, "en").lengthMarks());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "de | 1250 bis 1555 m",
                "es | marcas de 1250 a 1555 m",
                "fr | repères de 1250 à 1555 m",
            })
    void lengthMarksStandInTheLanguageOfTheCertificate(String language, String printed) {
        assertEquals(
                printed,
                texts(new LengthMarks(1250, 1555, "m"), UnitSystem.BOTH, language)
                        .lengthMarks());
    }

    @Test
    void whereNobodyStatedThemThereIsNoLine() {
        assertNull(texts(null, UnitSystem.BOTH, "en").lengthMarks());
    }
}
