package dev.reelproof.certificate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A customer reads how a test was done; what we noted about a source stays with us. The conditions are those of shipped limit sets. */
class TestConditionTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            textBlock =
                    """
            2.5 kV d.c. for 2 s | 2.5 kV d.c. for 2 s
            Breakdowns at direct voltage, 3 s each: conductor to conductor 3.6 kV, shield to core 10 kV. | Breakdowns at direct voltage, 3 s each: conductor to conductor 3.6 kV, shield to core 10 kV
            Four hours at 115 ± 1 °C. Not every reel is tested so; judged where it was | Four hours at 115 ± 1 °C
            Ten samples at −40 ± 1 °C. | Ten samples at −40 ± 1 °C
            One figure for each unit, "for any unit within the cable". Not corrected for length: no rule for it was read. Smaller units are judged by it too: an extension of ours, not the regulation's |
            In percent of the average; length and temperature cancel. Whether the sum is divided by n or n − 1 was not read |
            2.5 kV d.c. for 2 s. Caution: high voltage at 2.5 kV. | 2.5 kV d.c. for 2 s
            """)
    void onlyTheConditionOfTheTestIsPrinted(String condition, String printed) {
        assertEquals(Optional.ofNullable(printed), TestCondition.in(condition));
    }
}
