package dev.reelproof.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSamples;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Source;
import dev.reelproof.limit.TemperatureWindow;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LimitSetReaderTest {
    private static final Path SOUND = Path.of("src/test/resources/limits-sample/sound.yaml");
    private static final Path BROKEN = Path.of("src/test/resources/limits-broken");
    private static final String EXPECTED = "# ";

    private static LimitSet read(String text) {
        return new LimitSetReader(LimitSamples.LAW_CHECK).read("sample.yaml", text);
    }

    private static LimitSet sound() {
        return read(LimitSamples.text(SOUND));
    }

    static Stream<Path> brokenFiles() throws IOException {
        try (Stream<Path> files = Files.list(BROKEN)) {
            return files.sorted().toList().stream();
        }
    }

    /** Each file is the sound one with one fault; its last lines, comments, say which refusals it must get: where | message. */
    @ParameterizedTest
    @MethodSource("brokenFiles")
    void refusesABrokenFileAndSaysWhereAndWhy(Path file) {
        String text = LimitSamples.text(file);
        String name = file.getFileName().toString();
        List<String> expected = text.lines()
                .filter(line -> line.startsWith(EXPECTED))
                .map(line -> line.substring(EXPECTED.length()))
                .toList();

        LimitSetException refused = assertThrows(
                LimitSetException.class, () -> new LimitSetReader(LimitSamples.LAW_CHECK).read(name, text));

        assertEquals(
                expected,
                refused.faults().stream()
                        .map(fault -> fault.where().substring(name.length() + 1) + " | " + fault.message())
                        .toList());
        assertTrue(refused.faults().stream().allMatch(fault -> fault.where().startsWith(name + ":")));
    }

    @Test
    void readsTheHeadOfASoundFile() {
        LimitSet set = sound();

        assertEquals("sample-cable", set.id());
        assertEquals(1, set.revision());
        assertEquals(LocalDate.of(2026, 1, 1), set.effective());
        assertEquals("Sample cable", set.title());
        assertEquals(new PairCount(4, 25), set.pairs());
        assertEquals(Temperature.ofCelsius(20), set.referenceTemperature());
        assertEquals(100, set.referenceLength().metres());
        assertEquals(RoundingRule.ABSOLUTE, set.rounding());
        assertEquals(new GridRule(0.025, 2), set.grid());
        assertEquals(List.of(new LimitSet.LeftOut("mutual conductance", "there is no such property")), set.leftOut());
        assertEquals(LimitSamples.text(SOUND), set.text());
    }

    /** The digest was computed by the sha256sum of GNU coreutils. */
    @Test
    void digestIsThatOfTheFile() {
        assertEquals("44b359dea773a0a17d8017b25544235526bbbe75d4d64e6fc52e815d220de3e2", sound().sha256());
    }

    @Test
    void nameOfARequirementIsThePropertysUnlessGivenWithTheStatisticsWhenNotIndividual() {
        assertEquals(
                List.of(
                        "conductor-resistance",
                        "resistance-unbalance",
                        "mutual-capacitance-mean",
                        "next",
                        "insertion-loss"),
                sound().requirements().stream().map(Requirement::id).toList());
    }

    @Test
    void figuresKeepTheDecimalPlacesAsWritten() {
        LimitSet set = sound();

        assertEquals(
                OptionalInt.of(2),
                LimitSamples.requirement(set, "conductor-resistance")
                        .limit()
                        .upper()
                        .orElseThrow()
                        .decimals());
        Bound unbalance = LimitSamples.requirement(set, "resistance-unbalance")
                .limit()
                .upper()
                .orElseThrow();
        assertEquals(new Bound.Constant(5, 1), unbalance);
        assertEquals("5.0", unbalance.formula(1));
        assertEquals(
                Limit.between(new Bound.Constant(48, 0), new Bound.Constant(56, 0)),
                LimitSamples.requirement(set, "mutual-capacitance-mean").limit());
    }

    @Test
    void readsACurveOfBothShapesAsARange() {
        Requirement next = LimitSamples.requirement(sound(), "next");

        assertEquals(new Domain.Range(1, 100), next.domain());
        assertEquals(
                Limit.atLeast(new Bound.Curve(List.of(
                        new Segment.RootPolynomial(1, 10, 60, 0, 0, 0), new Segment.LogSlope(10, 100, 10, 60, -15)))),
                next.limit());
        assertEquals(Scope.WITHIN_UNIT, next.scope());
        assertEquals(Optional.of(new PairCount(12, 25)), next.unitPairs());
    }

    @Test
    void readsASpotWithItsTemperatureWindow() {
        Requirement loss = LimitSamples.requirement(sound(), "insertion-loss");

        assertEquals(new Domain.Spot(0.15), loss.domain());
        assertEquals(Optional.of(new TemperatureWindow(Temperature.ofCelsius(20), 1)), loss.temperatureWindow());
        assertEquals(1000, sound().referenceLengthOf(loss).metres());
    }

    @Test
    void readsLawsSourcesAndTheAllowance() {
        LimitSet set = sound();
        Requirement resistance = LimitSamples.requirement(set, "conductor-resistance");

        assertEquals(List.of(new LawSpec("linear-length", Map.of())), resistance.laws());
        assertEquals(new Source("a document", false), resistance.source());
        assertEquals(
                Optional.of("minimum"),
                LimitSamples.requirement(set, "resistance-unbalance").denominator());
        Allowance allowance = set.allowance().orElseThrow();
        assertEquals(0, allowance.pairsThatMayVary(12));
        assertEquals(1, allowance.pairsThatMayVary(13));
        assertEquals(Map.of(Property.RESISTANCE_UNBALANCE, new Bound.Constant(7, 0)), allowance.ceilings());
    }

    @Test
    void oneNameMayStandTwiceForDifferentNumbersOfPairs() {
        String text = LimitSamples.text(SOUND)
                .replace(
                        "  - property: resistance-unbalance\n",
                        """
                          - property: conductor-resistance
                            pairs: { from: 13, to: 25 }
                            limit: at-most
                            value: 9.5
                            unit: ohm/100 m
                            source: a document
                            read: false
                          - property: resistance-unbalance
                        """)
                .replace("    value: 9.38\n", "    value: 9.38\n    pairs: { from: 4, to: 12 }\n");

        assertEquals(6, read(text).requirements().size());
    }

    private static final String SPOT = "    value: 6.8\n    at: 150 kHz\n";

    private static String withTable(String interpolation) {
        return LimitSamples.text(SOUND)
                .replace(
                        SPOT,
                        """
                            table:
                              interpolation: %s
                              points:
                                - { at: 1 MHz, value: 2.0 }
                                - { at: 4 MHz, value: 4.0 }
                                - { at: 31.25 MHz, value: 11.70 }
                        """
                                .formatted(interpolation));
    }

    /** Halfway in log10 f between 1 and 4 MHz is 2 MHz, halfway in f is 2.5 MHz; both lie halfway between 2.0 and 4.0 dB. */
    @Test
    void aTableIsStraightBetweenItsPointsTheWayItSays() {
        Requirement overLog = LimitSamples.requirement(read(withTable("log-frequency")), "insertion-loss");
        Requirement overFrequency = LimitSamples.requirement(read(withTable("linear")), "insertion-loss");

        assertEquals(new Domain.Range(1, 31.25), overLog.domain());
        assertEquals(3.0, overLog.limit().upper().orElseThrow().at(2), 1e-12);
        assertEquals(3.0, overFrequency.limit().upper().orElseThrow().at(2.5), 1e-12);
        for (Requirement requirement : List.of(overLog, overFrequency)) {
            Bound bound = requirement.limit().upper().orElseThrow();
            assertEquals(2.0, bound.at(1), 0);
            assertEquals(4.0, bound.at(4), 0);
            assertEquals(11.7, bound.at(31.25), 0);
            assertEquals(OptionalInt.empty(), bound.decimals());
        }
        assertEquals(
                "2 at 1 MHz to 4 at 4 MHz, straight over log10(f)",
                overLog.limit().upper().orElseThrow().formula(2));
    }

    @Test
    void aTableWithoutInterpolationIsOneRequirementAPointWithItsOwnPlaces() {
        LimitSet set = read(withTable("none"));

        assertEquals(
                List.of("insertion-loss-at-1-mhz", "insertion-loss-at-4-mhz", "insertion-loss-at-31.25-mhz"),
                set.requirements().stream()
                        .map(Requirement::id)
                        .filter(id -> id.startsWith("insertion-loss"))
                        .toList());
        Requirement last = LimitSamples.requirement(set, "insertion-loss-at-31.25-mhz");
        assertEquals(new Domain.Spot(31.25), last.domain());
        assertEquals(Limit.atMost(new Bound.Constant(11.7, 2)), last.limit());
        assertEquals(Optional.of(new TemperatureWindow(Temperature.ofCelsius(20), 1)), last.temperatureWindow());
    }

    @Test
    void aRequirementThatSaysNothingMoreIsRequiredOfEveryPairAtAnyLength() {
        for (Requirement requirement : sound().requirements()) {
            assertEquals(Particulars.NONE, requirement.particulars());
            assertEquals(requirement.unit(), requirement.valueUnit());
        }
    }

    @Test
    void readsWhatARequirementSaysBeyondItsLimit() {
        LimitSet set = read(
                LimitSamples.text(SOUND)
                        .replace("    value: 9.38\n", "    value: 9.38\n    required: false\n")
                        .replace(
                                "    statistic: mean\n",
                                "    statistic: mean\n    sampling: { pairs: 5, lower: 50, upper: 53.0 }\n")
                        .replace(
                                "  - property: insertion-loss\n",
                                """
                          - property: return-loss
                            limit: at-least
                            least-round-trip-loss: 3 dB
                            segments: [{ from: 1 MHz, to: 10 MHz, constant: 20 }]
                            unit: dB
                            source: a document
                            read: true
                          - property: insulation-faults
                            limit: at-most
                            value: 1
                            unit: count/3000 m
                            tested-length: { least: 300 m, least-to-reject: 6 km }
                            source: a document
                            read: true
                          - property: conductor-resistance
                            statistic: percent-of-pairs
                            limit: at-least
                            value: 95
                            each: { limit: at-most, value: 9.0, unit: ohm/100 m }
                            unit: '%'
                            source: a document
                            read: true
                          - property: insulation-resistance
                            limit: at-least
                            value: 1600
                            unit: megohm·km
                            temperature-window: { at: 20 °C, within: 1 °C, warmer-pass-stands: true }
                            source: a document
                            read: true
                          - property: insertion-loss
                        """));

        assertEquals(false, of(set, "conductor-resistance").required());
        assertEquals(
                Optional.of(new Particulars.Sampling(5, new Bound.Constant(50, 0), new Bound.Constant(53, 1))),
                of(set, "mutual-capacitance-mean").sampling());
        assertEquals(OptionalDouble.of(3), of(set, "return-loss").leastRoundTripLoss());
        assertEquals(
                Optional.of(new Particulars.TestedLength(Length.ofMetres(300), Length.ofMetres(6000))),
                of(set, "insulation-faults").testedLength());
        Requirement share = LimitSamples.requirement(set, "conductor-resistance-percent-of-pairs");
        assertEquals(
                Limit.atMost(new Bound.Constant(9, 1)),
                share.particulars().each().orElseThrow().limit());
        assertEquals("ohm/100 m", share.valueUnit().text());
        assertEquals(100, set.referenceLengthOf(share).metres());
        assertEquals(
                Optional.of(new TemperatureWindow(Temperature.ofCelsius(20), 1, true)),
                LimitSamples.requirement(set, "insulation-resistance").temperatureWindow());
    }

    @Test
    void readsWhatAStatisticIsTakenOf() {
        LimitSet set = read(LimitSamples.text(SOUND)
                .replace("    statistic: mean\n", "    statistic: mean\n    per: unit\n")
                .replace("    scope: within-unit\n", "    scope: within-unit\n    statistic: rms\n    per: reel\n"));

        assertEquals(Per.UNIT, of(set, "mutual-capacitance-mean").per());
        assertEquals(Per.REEL, of(set, "next-rms").per());
        assertEquals(Per.REEL, of(set, "insertion-loss").per());
    }

    private static Particulars of(LimitSet set, String id) {
        return LimitSamples.requirement(set, id).particulars();
    }

    @Test
    void lowerMayEqualUpper() {
        LimitSet set = read(LimitSamples.text(SOUND).replace("lower: 48", "lower: 56"));

        assertEquals(
                "between",
                LimitSamples.requirement(set, "mutual-capacitance-mean").limit().sense());
    }

    @Test
    void whatHasNoFrequencyIsJudgedWithout() {
        assertEquals(
                new Domain.NoFrequency(),
                LimitSamples.requirement(sound(), "conductor-resistance").domain());
    }

    @Test
    void networkTermsAreTheUsualUnlessStated() {
        assertEquals(new NetworkTerms(100, 25, false), sound().networkTerms());
        assertEquals(
                new NetworkTerms(120, 30, true),
                read(LimitSamples.text(SOUND)
                                + "network: { differential: 120 ohm, common: 30 ohm, acr-f-loss: disturbing }\n")
                        .networkTerms());
        assertEquals(
                new NetworkTerms(100, 30, false),
                read(LimitSamples.text(SOUND) + "network: { common: 30 ohm, acr-f-loss: disturbed }\n")
                        .networkTerms());
    }

    /** Of 13 pairs both would hold. */
    @ParameterizedTest
    @CsvSource({"4, 13, 13, 25", "13, 25, 4, 13"})
    void oneNameForPairCountsThatMeetIsRefused(int from, int to, int otherFrom, int otherTo) {
        String text = LimitSamples.text(SOUND)
                .replace(
                        "  - property: resistance-unbalance\n",
                        """
                          - property: conductor-resistance
                            pairs: { from: %d, to: %d }
                            limit: at-most
                            value: 9.5
                            unit: ohm/100 m
                            source: a document
                            read: false
                          - property: resistance-unbalance
                        """
                                .formatted(otherFrom, otherTo))
                .replace("    value: 9.38\n", "    value: 9.38\n    pairs: { from: %d, to: %d }\n".formatted(from, to));

        LimitSetException refused = assertThrows(LimitSetException.class, () -> read(text));

        assertTrue(
                refused.getMessage().contains("there is another requirement 'conductor-resistance'"),
                refused.getMessage());
    }
}
