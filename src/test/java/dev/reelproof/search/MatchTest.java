package dev.reelproof.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which text answers which question, and how well. */
class MatchTest {

    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "SO-4711, so 4711, EXACT",
                "SO-4711, SO4711, EXACT",
                "SO-4711, so_47/11, EXACT",
                "SO-4711, so, WORDS",
                "SO-4711, 4711, WORDS",
                "SO4711, 4711, WORDS",
                "SO-4711, SO-47, BEGINNING",
                "SO-4711, 47, WORD_BEGINNING",
                "SO-4711, 711, ",
                "SO-4711, SO-47110, ",
                "NORTH-2026-000123, 123, WORDS",
                "NORTH-2026-000123, 0123, ",
                "NORTH-2026-000123, 000123, WORDS",
                "NORTH-2026-000123, 2026 000123, WORDS",
                "NORTH-2026-000123, north2026, WORDS",
                "NORTH-2026-000123, 20260, WORD_BEGINNING",
                "R-100, 00, ",
                "The Invented Cable Works, cable works, WORDS",
                "The Invented Cable Works, cab, WORD_BEGINNING",
                "The Invented Cable Works, works cable, ",
                "Blåbær & Sons, blabær, WORDS",
                "Müller, MULLER, EXACT",
                "Straße, STRASSE, EXACT",
                "ΟΔΟΣ, οδος, EXACT",
                "Йод, йод, EXACT",
                "ＳＯ－４７１１, so4711, EXACT",
                "SO-٤٧, so47, EXACT"
            })
    void answers(String text, String question, Match expected) {
        assertEquals(Optional.ofNullable(expected), Match.of(text, Question.of(question)));
    }

    @Test
    void nothingAnswersAQuestionWithoutLetterOrDigit() {
        assertTrue(Question.of(" - – ").isEmpty());
        assertEquals(Optional.empty(), Match.of("SO-4711", Question.of("-")));
        assertEquals(List.of(), SearchKeys.of(" – "));
    }

    @Test
    void theWholeTextIsTheFirstKey() {
        assertEquals(List.of("north2026000123", "2026000123", "000123", "123"), SearchKeys.of("NORTH-2026-000123"));
        assertEquals(List.of("hd6a4p", "6a4p", "4p"), SearchKeys.of("HD6A-4P"));
        assertEquals(List.of("aa", "a"), SearchKeys.of("a a"));
    }

    @Test
    void aLongTextIsFoundByItsBeginningAndIsExactByAllOfIt() {
        String text = "x".repeat(200);
        assertEquals(SearchKeys.LONGEST, SearchKeys.of(text).get(0).length());
        assertEquals(Question.of(text).key(), SearchKeys.of(text).get(0));
        assertEquals(Optional.of(Match.EXACT), Match.of(text, Question.of(text)));
        assertEquals(Optional.of(Match.BEGINNING), Match.of(text + "y", Question.of(text)));
    }
}
