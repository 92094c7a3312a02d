package dev.reelproof.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What holds for every text and every question. */
class MatchPropertyTest {

    /** Of what people name things with, and of what they do not. */
    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.oneOf(
                Arbitraries.strings().withChars("aZ09é-_/ .ßΣж").ofMaxLength(24),
                Arbitraries.strings().ofMaxLength(24));
    }

    @Property
    void foldingTwiceIsFoldingOnce(@ForAll("texts") String text) {
        String once = Question.of(text).folded();
        assertEquals(once, Question.of(once).folded());
        assertTrue(once.codePoints().allMatch(Character::isLetterOrDigit), once);
    }

    @Property
    void separatorsNeverMatter(@ForAll("texts") String text) {
        String apart = text.codePoints().mapToObj(Character::toString).collect(Collectors.joining(" - "));
        assertEquals(Question.of(text), Question.of(apart));
    }

    @Property
    void caseNeverMatters(@ForAll("texts") String text) {
        assertEquals(Question.of(text), Question.of(text.toUpperCase(Locale.ROOT)));
    }

    @Property
    void everyTextAnswersItself(@ForAll("texts") String text) {
        Question question = Question.of(text);
        assertEquals(question.isEmpty() ? Optional.empty() : Optional.of(Match.EXACT), Match.of(text, question));
    }

    /** The store looks by keys alone: it must find exactly what matches. */
    @Property
    void aKeyBeginsWithTheQuestionWhereTheTextMatches(@ForAll("texts") String text, @ForAll("questions") String asked) {
        Question question = Question.of(asked);
        if (question.isEmpty()) {
            return;
        }
        List<String> keys = SearchKeys.of(text);
        assertEquals(
                keys.stream().anyMatch(key -> key.startsWith(question.key())),
                Match.of(text, question).isPresent());
    }

    @Provide
    Arbitrary<String> questions() {
        return Arbitraries.strings().withChars("aZ09é-ßΣ").ofMinLength(1).ofMaxLength(3);
    }

    /** The store asks for a range: in the order of bytes of UTF-8, which is that of code points. */
    @Property
    void theRangeHoldsWhatBeginsWithTheQuestionAndNothingElse(
            @ForAll("texts") String text, @ForAll("questions") String asked) {
        Question question = Question.of(asked);
        if (question.isEmpty()) {
            return;
        }
        for (String key : SearchKeys.of(text)) {
            boolean isInside = compare(key, question.key()) >= 0 && compare(key, question.behind()) < 0;
            assertEquals(key.startsWith(question.key()), isInside, key);
        }
    }

    private static int compare(String one, String other) {
        return java.util.Arrays.compare(
                one.codePoints().toArray(), other.codePoints().toArray());
    }
}
