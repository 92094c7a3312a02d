package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Obstacles as data, and the sentences that records keep of them. */
class ObstacleTest {

    /** What records say stays as it was before obstacles were data. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "EQUIPMENT_OUT_OF_CALIBRATION | equipment=na-07,due=2026-01-31,finished=2026-03-02"
                        + " | equipment out of calibration: na-07 was due 2026-01-31, the test was finished 2026-03-02",
                "TEMPERATURE_OUTSIDE_WINDOW | temperature=31.0,at=23.0,within=3.0"
                        + " | temperature outside the window: measured at 31.0 °C; the limit holds at 23.0 ± 3.0 °C and no law of correction is stated",
                "NO_DATA | property=next | no data: no next was measured",
                "NO_DATA | property=ps-next,part=next | no data: no ps-next was measured, nor any next that it is formed from",
                "NO_DATA | property=ps-next,incomplete=next,absent=every combination with pair 3 at the near end"
                        + " | no data: no ps-next was measured, and it is not formed: next is missing of every combination with pair 3 at the near end",
                "NO_DATA_WITHIN_LIMIT | property=next | no data: no next was measured where the limit holds",
                "PAIR_MISSING | property=next,missing=pairs 1 to 3 | pair missing: next of pairs 1 to 3 was not measured",
                "PAIR_MISSING | property=ps-next,missing=pair 2,part=next"
                        + " | pair missing: ps-next of pair 2 was not measured, nor any next that it is formed from",
                "CONDUCTOR_MISSING | property=resistance-unbalance-direction | pair missing: resistance-unbalance-direction cannot be derived:"
                        + " not every pair has the resistance of both conductors",
                "RANGE_NOT_SPANNED | property=next,where=pair 1 and pair 2,from=1.0,to=100.0,limitFrom=1.0,limitTo=500.0"
                        + " | range not spanned: next of pair 1 and pair 2 was measured from 1.0 to 100.0 MHz; the limit runs from 1.0 to 500.0 MHz",
                "SPOT_NOT_MEASURED | property=next,where=pair 1 and pair 2,at=0.772"
                        + " | range not spanned: next of pair 1 and pair 2 has no point at 0.772 MHz",
                "GRID_TOO_COARSE | property=next,where=pair 1 and pair 2,from=1.0,to=9.0,widest=2.0,widestDecades=0.025"
                        + " | grid too coarse: next of pair 1 and pair 2 has a step from 1.0 to 9.0 MHz; at most 2.0 MHz or 0.025 decades,"
                        + " whichever is wider",
                "LENGTH_TOO_SHORT | property=return-loss,where=pair 1,least=3.0,smallest=0.5,from=1.0,to=4.0"
                        + " | length too short: return-loss of pair 1 needs 3.0 dB of loss there and back, twice the measured insertion loss of the"
                        + " pair, and has as little as 0.5 dB from 1.0 to 4.0 MHz",
                "LENGTH_TOO_SHORT | property=return-loss,where=pair 1,least=3.0,smallest=0.5"
                        + " | length too short: return-loss of pair 1 needs 3.0 dB of loss there and back, twice the measured insertion loss of the"
                        + " pair, and has as little as 0.5 dB",
                "LENGTH_NOT_KNOWN_ENOUGH | property=return-loss,where=pair 1,from=1.0,to=4.0"
                        + " | length too short or not: the insertion loss of the pair, which tells whether the reel is long enough for return-loss"
                        + " of pair 1, was not measured from 1.0 to 4.0 MHz",
                "TOO_LITTLE_TESTED | tested=100.0,least=300.0,leastToReject=6000.0"
                        + " | too little tested: 100.0 m of conductor; at least 300.0 m must be tested for a judgement and 6000.0 m for one against"
                        + " the reel",
                "UNITS_UNKNOWN | x=y | units unknown: the product does not say which pairs form its units",
                "PARTS_PER_DIFFERENT_LENGTHS | property=ps-next,where=pair 1"
                        + " | ps-next of pair 1 cannot be derived: its parts were sent per different lengths",
                "PARTS_ON_DIFFERENT_FREQUENCIES | property=ps-next,where=pair 1"
                        + " | ps-next of pair 1 cannot be derived: its parts were measured on different frequencies",
                "CORRECTION_NOT_POSSIBLE | why=it is too hot | correction not possible: it is too hot",
                "NO_UNCERTAINTY | why=there is no model | no uncertainty for the guard band: there is no model",
                "NO_STATISTIC | statistic=mean,why=there are none | no mean of these values: there are none",
                "FIGURE_NOT_KEPT | outcome=pass"
                        + " | recorded as pass, but without a figure: the record keeps no value that was held against the limit",
                "AS_RECORDED | sentence=whatever it was | whatever it was",
            })
    void whatRecordsSayStaysAsItWas(Obstacle.Kind kind, String parts, String sentence) {
        Map<String, String> named = new TreeMap<>();
        for (String part : parts.split(",")) {
            named.put(part.split("=")[0], part.split("=")[1]);
        }
        assertEquals(sentence, new Obstacle(kind, named).sentence());
    }

    @ParameterizedTest
    @EnumSource(Obstacle.Kind.class)
    void aKindIsFoundByItsWord(Obstacle.Kind kind) {
        assertEquals(kind, Obstacle.Kind.named(kind.id()));
    }

    @Test
    void anObstacleWithoutThePartsOfItsSentenceIsRefused() {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> new Obstacle(Obstacle.Kind.PAIR_MISSING, Map.of("property", "next")))
                .getMessage();
        assertTrue(message.contains("'missing'"), message);
    }

    @Test
    void ofManyThreeAreNamedAndTheRestCounted() {
        List<Obstacle> many = Arrays.asList("one", "two", "three", "four", "five").stream()
                .map(Obstacle::asRecorded)
                .toList();
        assertEquals("one; two; three; and 2 more", Obstacles.of(many).sentence());
        assertEquals("one; two; three", Obstacles.of(many.subList(0, 3)).sentence());
        assertEquals(3, Obstacles.of(many).named().size());
        assertThrows(IllegalArgumentException.class, () -> new Obstacles(List.of(), 1));
        assertThrows(IllegalArgumentException.class, () -> new Obstacles(many, -1));
    }

    @Test
    void aPartMayLookLikeAPattern() {
        assertEquals("a {b} $1 [c]", Message.fill("{x}", Map.of("x", "a {b} $1 [c]")));
        assertEquals("yes", Message.fill("yes[, {x}]", Map.of()));
        assertEquals("yes, and ", Message.fill("yes[, {x}]", Map.of("x", "and ")));
    }
}
