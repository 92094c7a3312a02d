package dev.reelproof.api.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import dev.reelproof.api.Quantity;
import dev.reelproof.api.reel.ReelDispositionResource;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written field by field is what the description of the API says of the records: all their fields, as reflection finds them. */
class PedigreeWritingTest {
    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-02-11T12:00:00.120Z");
    private static final Quantity LENGTH = new Quantity(11.9, "km");
    private static final LotAnswer.Position POSITION =
            new LotAnswer.Position(LENGTH, new Quantity(1e9, "m"), new Quantity(0, "m"), new Quantity(1e-7, "m"));

    private static final ObjectMapper BY_HAND = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .build();
    private static final ObjectMapper BY_REFLECTION = BY_HAND.copy()
            .addMixIn(PedigreeAnswer.Place.class, ByReflection.class)
            .addMixIn(PedigreeAnswer.Link.class, ByReflection.class)
            .addMixIn(DescendantsAnswer.Reel.class, ByReflection.class);

    @JsonSerialize(using = JsonSerializer.None.class)
    private interface ByReflection {}

    static Stream<Record> answers() {
        return Stream.of(
                new PedigreeAnswer.Place(
                        "IC-1",
                        "north",
                        "insulated-conductor",
                        3,
                        LENGTH,
                        NOON,
                        "insulating",
                        "INS-1",
                        "RUN-1",
                        List.of(
                                new LotAnswer.Implausible("AC-1", "more than \"fits\""),
                                new LotAnswer.Implausible(null, "Ä"))),
                new PedigreeAnswer.Place("R-1", "north", "reel", 0, LENGTH, null, null, null, null, List.of()),
                new PedigreeAnswer.Link("AC-1", "IC-1", LENGTH, POSITION),
                new PedigreeAnswer.Link("AC-1", "IC-1", new Quantity(120, "kg"), null),
                new DescendantsAnswer.Reel("R-1", null, null, null),
                new DescendantsAnswer.Reel(
                        "R-1",
                        "SO-1",
                        "An invented customer",
                        new ReelDispositionResource.DispositionAnswer("shipped", "To", null, "someone", NOON)));
    }

    @ParameterizedTest
    @MethodSource("answers")
    void isWhatReflectionWouldWrite(Record answer) throws JsonProcessingException {
        assertEquals(BY_REFLECTION.writeValueAsString(answer), BY_HAND.writeValueAsString(answer));
    }

    @Property
    void timesAreInIso8601(
            @ForAll @LongRange(min = -70_000_000_000L, max = 300_000_000_000L) long second,
            @ForAll @IntRange(max = 999_999_999) int nano,
            @ForAll @IntRange(min = -18, max = 18) int hours) {
        for (int part : new int[] {nano, nano / 1_000_000 * 1_000_000, 0}) {
            for (ZoneOffset offset : List.of(ZoneOffset.UTC, ZoneOffset.ofHours(hours))) {
                OffsetDateTime time = Instant.ofEpochSecond(second, part).atOffset(offset);

                assertEquals(DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time), PedigreeWriting.text(time));
            }
        }
    }
}
