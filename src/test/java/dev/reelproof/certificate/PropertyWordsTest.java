package dev.reelproof.certificate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.limit.LimitSamples;
import dev.reelproof.measurement.Property;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every property has the trade's word and a plain one, on the certificate and on the page. */
class PropertyWordsTest {
    /** What a column of the certificate holds. */
    private static final int LONGEST_PLAIN = 60;

    private static String page() throws IOException {
        try (var in = PropertyWordsTest.class.getResourceAsStream("/META-INF/resources/app.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @EnumSource(Property.class)
    void hasWords(Property property) throws IOException {
        assertFalse(Words.title(property).isBlank());
        assertFalse(Words.plain(property).isBlank());
        assertTrue(Words.plain(property).length() <= LONGEST_PLAIN, Words.plain(property));
        Matcher onThePage = Pattern.compile("'" + property.id() + "': \\['([^']+)', '([^']+)'\\]")
                .matcher(page());
        assertTrue(onThePage.find(), "the page has no words for " + property);
        assertEquals(Words.title(property), onThePage.group(1));
    }

    /** A count alone needs no unit in print; a count per length means nothing without. */
    @Test
    void aCountPerLengthKeepsItsUnitAndItsPlaces() {
        Row faults =
                CertificateSamples.meetingAll(LimitSamples.shipped("us-terminating-cable-24awg", 2), 100)
                        .rows()
                        .stream()
                        .filter(row -> row.property().equals("insulation-faults"))
                        .findFirst()
                        .orElseThrow();

        assertEquals("≤ 1 count/3000 m", faults.limit());
        assertEquals("1.0", faults.value());
        assertEquals("count/3000 m", faults.unit());
    }

    @ParameterizedTest
    @EnumSource(Property.class)
    void noTwoShareATitle(Property property) {
        assertEquals(
                1,
                Arrays.stream(Property.values())
                        .filter(other -> Words.title(other).equals(Words.title(property)))
                        .count());
    }
}
