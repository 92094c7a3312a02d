package dev.reelproof.certificate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CertificateNumberTest {
    @Test
    void readsAsPlantYearAndSixDigits() {
        assertEquals(
                "NORTH-2026-000123", CertificateNumber.of("north", 2026, 123).toString());
    }

    @Test
    void whatIsPrintedIsReadBack() {
        CertificateNumber number = CertificateNumber.of("n2", 2031, 999_999);
        assertEquals(number, CertificateNumber.parse(number.toString()));
        assertEquals(Optional.of(number), CertificateNumber.find(number.toString()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "NORTH",
                "NORTH-2026-123",
                "north-2026-000123",
                "NORTH-26-000123",
                "NORTH-2026-000000",
                "NORTH-1999-000001",
                "2NORTH-2026-000001",
                "NORTH-2026-0000001",
                "NORTH-2026-000001 ",
                "A-B-2026-000001",
                "ABCDEFGHIJKLM-2026-000001"
            })
    void anythingElseIsRefused(String text) {
        assertThrows(IllegalArgumentException.class, () -> CertificateNumber.parse(text));
        assertEquals(Optional.empty(), CertificateNumber.find(text));
    }

    @Test
    void theMessageSaysWhatWouldBeRight() {
        String message = assertThrows(
                        IllegalArgumentException.class, () -> CertificateNumber.of("north", 2026, 1_000_000))
                .getMessage();
        assertTrue(message.contains("1 to 999999") && message.contains("1000000"), message);
    }
}
