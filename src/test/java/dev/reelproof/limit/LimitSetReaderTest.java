package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Temperature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
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

    @Test
    void lowerMayEqualUpper() {
        LimitSet set = read(LimitSamples.text(SOUND).replace("lower: 48", "lower: 56"));

        assertEquals(
                "between",
                LimitSamples.requirement(set, "mutual-capacitance-mean").limit().sense());
    }
}
