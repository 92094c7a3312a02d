package dev.reelproof.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.limit.Construction;
import dev.reelproof.limit.Constructions;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConstructionReaderTest {
    private static final String SOUND =
            """
            id: sample
            title: Sample construction
            limit-sets:
              - { limit-set: one-cable }
              - { limit-set: other-cable, gauge: 24 AWG }
            """;

    private static Construction read(String text) {
        return new ConstructionReader(Set.of("one-cable", "other-cable")).read("sample.yaml", text);
    }

    @Test
    void readsASoundFile() {
        assertEquals(
                new Construction(
                        "sample",
                        "Sample construction",
                        List.of(
                                new Construction.Grade("one-cable", Optional.empty()),
                                new Construction.Grade("other-cable", Optional.of("24 AWG")))),
                read(SOUND));
    }

    /** One fault at a time, put in by a replacement; what must be said of it, with line and place. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "other-cable | no-cable | sample.yaml:5 /limit-sets/1/limit-set: there is no limit set 'no-cable'; there are one-cable, other-cable",
                "other-cable | one-cable | sample.yaml:5 /limit-sets/1/limit-set: the limit set 'one-cable' stands here twice; give it once",
                "other-cable | No Cable | sample.yaml:5 /limit-sets/1/limit-set: 'No Cable' must be a name in small letters, figures and hyphens, such as category-6a-cable",
                "gauge | wire | sample.yaml:5 /limit-sets/1/wire: unknown key 'wire'; known here: limit-set, gauge",
                "24 AWG | ' ' | sample.yaml:5 /limit-sets/1/gauge: ' ' must be a text that is not blank",
                "title: Sample construction | | sample.yaml:1: the key 'title' is missing",
                "id: sample | id: A Sample | sample.yaml:1 /id: 'A Sample' must be a name in small letters, figures and hyphens, such as category-6a-cable",
                "id: sample | id: [sample | sample.yaml:2: this is not YAML: expected ',' or ']', but got :",
            })
    void refusesAFaultAndSaysWhereAndWhy(String there, String instead, String said) {
        String text = SOUND.replace(there, instead == null ? "" : instead);
        assertEquals(
                said, assertThrows(LimitSetException.class, () -> read(text)).getMessage());
    }

    @Test
    void anEmptyFileIsToldWhatItMustHold() {
        LimitSetException refused = assertThrows(LimitSetException.class, () -> read(""));
        assertEquals("sample.yaml:1: the file is empty; it must hold one construction", refused.getMessage());
    }

    @Test
    void theOthersAreThoseOfTheConstructionThatFitTheGauge() {
        Construction two = new Construction(
                "two",
                "Two",
                List.of(
                        new Construction.Grade("a", Optional.empty()),
                        new Construction.Grade("b", Optional.of("24 AWG")),
                        new Construction.Grade("c", Optional.of("22 AWG"))));
        Construction more = new Construction(
                "more",
                "More",
                List.of(
                        new Construction.Grade("a", Optional.empty()),
                        new Construction.Grade("b", Optional.empty()),
                        new Construction.Grade("d", Optional.empty())));
        Constructions constructions = new Constructions(List.of(two, more));
        assertEquals(List.of("b", "d"), constructions.othersOf("a", "24awg"));
        assertEquals(List.of("c", "b", "d"), constructions.othersOf("a", "22 AWG"));
        assertEquals(List.of("b", "d"), constructions.othersOf("a", ""));
        assertEquals(List.of("a"), constructions.othersOf("c", "23 AWG"));
        assertEquals(List.of(), constructions.othersOf("e", "24 AWG"));
    }
}
