package dev.reelproof.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LengthAgreementTest {
    private static final Length REGISTERED = Length.ofMetres(1000);

    @ParameterizedTest
    @ValueSource(doubles = {980, 1000, 1020})
    void agreesUpToTwoPercent(double metres) {
        assertEquals(Optional.empty(), LengthAgreement.warning(REGISTERED, Length.ofMetres(metres)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {979.9, 1020.1, 3048})
    void warnsBeyondWithBothLengths(double metres) {
        String warning =
                LengthAgreement.warning(REGISTERED, Length.ofMetres(metres)).orElseThrow();
        assertTrue(warning.contains(metres + " m") && warning.contains("1000.0 m, by more than 2 %"), warning);
    }
}
