package dev.reelproof.limit.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.digest.Sha256;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.LevelSide;
import dev.reelproof.limit.LimitSamples;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.RelativeUncertainty;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Source;
import dev.reelproof.limit.UncertaintyLibrary;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Property;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class UncertaintyModelReaderTest {
    private static final Path SOUND = Path.of("src/test/resources/uncertainty-sample/sound.yaml");
    private static final Path BROKEN = Path.of("src/test/resources/uncertainty-broken");
    private static final String EXPECTED = "# ";

    private static UncertaintyModel sound() {
        return new UncertaintyModelReader().read("sample.yaml", LimitSamples.text(SOUND));
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
        LimitSetException refused =
                assertThrows(LimitSetException.class, () -> new UncertaintyModelReader().read(name, text));
        assertEquals(
                expected,
                refused.faults().stream()
                        .map(fault -> fault.where().substring(name.length() + 1) + " | " + fault.message())
                        .toList());
    }

    @Test
    void readsASoundFile() {
        UncertaintyModel model = sound();
        assertEquals("sample-bay", model.id());
        assertEquals(1, model.revision());
        assertEquals(LocalDate.of(2026, 1, 1), model.effective());
        assertEquals(2, model.coverageFactor());
        assertEquals(95.45, model.confidencePercent());
        assertEquals(LimitSamples.text(SOUND), model.text());
        // 1 °C expanded with the model's factor of 2
        assertEquals(0.5, model.temperature().standard(23, Double.NaN).orElseThrow());
        // 0.5 m and 0.3 % of 400 m, a 5, 12, 13 triangle in tenths, with a factor of its own, 3
        assertEquals(1.3 / 3, model.length().standard(400, Double.NaN).orElseThrow(), 1e-15);
        assertEquals(Optional.empty(), model.entry("bridge", Property.NEXT));
        assertTrue(model.without("bridge", Property.NEXT).contains("has no entry for next in class 'bridge'"));
        assertTrue(model.without("b", Property.NEXT).contains("has no class 'b'; it has bridge, default"));
    }

    private static UncertaintyModel soundWith(String found, String instead) {
        return new UncertaintyModelReader()
                .read("sample.yaml", LimitSamples.text(SOUND).replace(found, instead));
    }

    @Test
    void anEntryMaySayHowFarItsReadingsErrAlike() {
        assertEquals(
                1,
                sound().entry("default", Property.CONDUCTOR_RESISTANCE)
                        .orElseThrow()
                        .correlation(),
                "all alike where nothing is said");
        String parts = "constant: 0.03, proportional: 0.4 %";
        for (double stated : new double[] {0, 0.25, 1}) {
            assertEquals(
                    stated,
                    soundWith(parts, parts + ", correlation: " + stated)
                            .entry("default", Property.CONDUCTOR_RESISTANCE)
                            .orElseThrow()
                            .correlation());
        }
    }

    @Test
    void theCorrelationIsSaidInWords() {
        assertEquals(
                List.of(
                        "each reading errs for itself (correlation 0)",
                        "the readings of one result err alike in part (correlation 0.25)",
                        "all readings of one result err alike (correlation 1)"),
                Stream.of(0, 0.25, 1)
                        .map(correlation ->
                                correlated(correlation.doubleValue()).correlationWords())
                        .toList());
    }

    @Test
    void aCorrelationLiesBetweenNothingAndOne() {
        for (double impossible : new double[] {-1.5, -0.1, 1.01, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertEquals(
                    "the correlation between the readings of an instrument is " + impossible
                            + "; it must be from 0 (each reading errs for itself) to 1 (all err alike)",
                    assertThrows(IllegalArgumentException.class, () -> correlated(impossible))
                            .getMessage());
        }
    }

    private static InstrumentUncertainty correlated(double correlation) {
        return new InstrumentUncertainty(
                1,
                0,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                "ohm",
                2,
                correlation,
                new Source("own", true));
    }

    @Test
    void lengthMarksAndTemperatureCoefficientsMayHaveAnUncertainty() {
        assertEquals(Optional.empty(), sound().lengthMarks());
        assertEquals(Optional.empty(), sound().temperatureCoefficients());
        UncertaintyModel model = soundWith(
                "classes:",
                """
                length-marks: { constant: 0.5 m, proportional: 0.3 %, source: a document, read: true }
                temperature-coefficients: { proportional: 6 %, coverage-factor: 3, source: a document, read: false }
                classes:""");
        // 0.5 m and 0.3 % of 400 m: 5, 12, 13 in tenths, with the model's factor of 2
        assertEquals(
                0.65,
                model.lengthMarks().orElseThrow().standard(400, Double.NaN).orElseThrow(),
                1e-15);
        RelativeUncertainty coefficients = model.temperatureCoefficients().orElseThrow();
        assertEquals(0.02, coefficients.standard(), 1e-16);
        assertEquals("6 %, k = 3", coefficients.words());
        assertEquals(new Source("a document", false), coefficients.source());
    }

    @Test
    void aRelativeUncertaintyIsARatioOfNothingOrMore() {
        Source own = new Source("own", true);
        for (double impossible : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> new RelativeUncertainty(impossible, 2, own));
        }
        assertThrows(IllegalArgumentException.class, () -> new RelativeUncertainty(0.1, 0, own));
        assertEquals(0, new RelativeUncertainty(0, 2, own).standard());
    }

    @Test
    void theDigestIsOfTheText() {
        assertEquals(Sha256.hex(LimitSamples.text(SOUND)), sound().sha256());
        assertEquals(64, sound().sha256().length());
    }

    @Test
    void partsAddUpAsSquares() {
        InstrumentUncertainty bridge =
                sound().entry("default", Property.CONDUCTOR_RESISTANCE).orElseThrow();
        // 0.03 ohm and 0.4 % of 10 ohm: 3, 4, 5; with a factor of 2
        assertEquals(0.025, bridge.standard(10, Double.NaN).orElseThrow(), 1e-15);
        assertEquals("0.03 ohm and 0.4 % of the reading, k = 2", bridge.words());
    }

    @Test
    void aLevelsNoiseFloorCountsAsAmplitude() {
        InstrumentUncertainty next = sound().entry("default", Property.NEXT).orElseThrow();
        // A reading 20 dB above the floor: noise of a tenth of its amplitude. 0.5 dB is 5.9254 % and 0.2 dB 2.3293 % of
        // it; the root
        // of the squares is 11.8548 %, which in phase takes 0.97309 dB from the level (arithmetic).
        assertEquals(0.97309, next.standard(60, 20).orElseThrow(), 1e-5);
        // Far above the floor the other parts are left: 5.9254 % and 1.1579 % (0.1 dB) make 6.0375 %, 0.50919 dB.
        assertEquals(0.50919, next.standard(0, 5).orElseThrow(), 1e-5);
    }

    /** A deep minimum of the crosstalk reads as a great level: it lies at the noise floor or beyond, not anywhere. */
    @Test
    void howeverHighALevelItIsNoLowerThanTheNoiseFloor() {
        InstrumentUncertainty next = sound().entry("default", Property.NEXT).orElseThrow();
        for (double level = 81; level < 200; level += 7) {
            double lowest = level - next.standard(level, 5).orElseThrow();
            assertTrue(lowest < 80 && lowest > 73.9, "from " + lowest);
        }
    }

    private static InstrumentUncertainty ofLoss(double constant) {
        return new InstrumentUncertainty(
                constant,
                0,
                Optional.empty(),
                Optional.of(LevelSide.HIGHER),
                OptionalDouble.of(110),
                "dB",
                2,
                InstrumentUncertainty.ALL_COMMON,
                new Source("own", true));
    }

    @Test
    void aLossThatMayBeNoiseAltogetherHasNoBound() {
        // 20 dB above the floor: 10 % and 1 − 10^(−0.5/20) = 5.5939 % make 11.4583 %, which may hide 1.05704 dB
        // (arithmetic).
        assertEquals(1.05704 / 2, ofLoss(0.5).standard(90, 100).orElseThrow(), 1e-5);
        assertEquals(OptionalDouble.empty(), ofLoss(0.5).standard(110, 100));
        assertEquals(OptionalDouble.empty(), ofLoss(0).standard(110, 100));
        assertEquals(OptionalDouble.empty(), ofLoss(0.5).standard(138, 100));
    }

    @Test
    void thePartsOfWhatIsNoLevelAddUpAsSquaresThroughout() {
        InstrumentUncertainty delay = new InstrumentUncertainty(
                3,
                0.01,
                Optional.of(new Bound.Curve(List.of(new Segment.RootPolynomial(1, 100, 12, 0, 0, 0)))),
                Optional.empty(),
                OptionalDouble.empty(),
                "ns",
                2,
                InstrumentUncertainty.ALL_COMMON,
                new Source("own", true));
        // 3 ns, 1 % of 400 ns and 12 ns: 3, 4, 5 and 5, 12, 13; with a factor of 2
        assertEquals(6.5, delay.standard(400, 10).orElseThrow(), 1e-12);
    }

    @Test
    void onlyALevelHasANoiseFloor() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new InstrumentUncertainty(
                        1,
                        0,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.of(80),
                        "ohm",
                        2,
                        InstrumentUncertainty.ALL_COMMON,
                        new Source("this test's own", true)));
    }

    @Test
    void outsideItsCurveAModelSaysNothing() {
        InstrumentUncertainty next = sound().entry("default", Property.NEXT).orElseThrow();
        assertEquals(OptionalDouble.empty(), next.standard(60, 100.1));
        assertEquals(OptionalDouble.empty(), next.standard(60, 0.9));
        assertEquals(OptionalDouble.empty(), next.standard(60, Double.NaN));
        assertTrue(next.standard(60, 100).isPresent());
        assertTrue(next.standard(60, 1).isPresent());
    }

    @Test
    void aLimitSetMayStateItsDecisionRule() {
        String text = LimitSamples.text(Path.of("src/test/resources/limits-sample/sound.yaml"));
        LimitSetReader reader = new LimitSetReader(LimitSamples.LAW_CHECK);
        LimitSet silent = reader.read("a.yaml", text);
        assertEquals(DecisionRule.SIMPLE_ACCEPTANCE, silent.decisionRule());
        assertEquals(Optional.empty(), silent.requirements().get(0).decisionRule());

        LimitSet stated = reader.read(
                "a.yaml",
                text.replace(
                                "rounding: absolute",
                                "rounding: absolute\ndecision-rule: { rule: guard-band, multiple: 0.5, outcomes: four }")
                        .replaceFirst(
                                "    read: false", "    read: false\n    decision-rule: { rule: simple-acceptance }"));
        assertEquals(new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 0.5), stated.decisionRule());
        assertEquals(
                DecisionRule.SIMPLE_ACCEPTANCE,
                stated.decisionRuleOf(stated.requirements().get(0)));
        assertEquals(
                stated.decisionRule(),
                stated.decisionRuleOf(stated.requirements().get(1)));
        assertEquals(
                "guard band of 0.5 × U, four outcomes", stated.decisionRule().words());
    }

    @Test
    void aGuardBandHasAWidthAndSimpleAcceptanceNone() {
        assertEquals(
                "the multiple of a guard band must be above 0, not 0.0; without a guard band the rule is simple acceptance",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> new DecisionRule(DecisionRule.Form.GUARD_BAND_TWO, 0))
                        .getMessage());
        assertThrows(
                IllegalArgumentException.class, () -> new DecisionRule(DecisionRule.Form.GUARD_BAND_TWO, Double.NaN));
        assertEquals(
                "simple acceptance has no guard band, so no multiple, not 1.0",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> new DecisionRule(DecisionRule.Form.SIMPLE_ACCEPTANCE, 1))
                        .getMessage());
    }

    @Test
    void theWordsNameThePartsThatThereAre() {
        UncertaintyModel model = sound();
        assertEquals(
                "0.001 ohm, k = 2",
                model.entry("bridge", Property.CONDUCTOR_RESISTANCE)
                        .orElseThrow()
                        .words());
        assertEquals(
                "0.5 dB and (0.1 (1 to 10 MHz); 0.01·f (10 to 100 MHz)) dB and a noise floor of 80 dB, combined as"
                        + " amplitudes, k = 1",
                model.entry("default", Property.NEXT).orElseThrow().words());
        assertEquals("1 % of the reading, k = 2", ofLength(0, 0.01, 2).words());
        assertEquals("a noise floor of 110 dB, k = 2", ofLoss(0).words());
        assertEquals(
                "uncertainty model sample-bay revision 1 has no class 'b'; it has bridge, default",
                model.without("b", Property.NEXT));
    }

    private static InstrumentUncertainty ofLength(double constant, double proportional, double coverageFactor) {
        return new InstrumentUncertainty(
                constant,
                proportional,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                "m",
                coverageFactor,
                InstrumentUncertainty.ALL_COMMON,
                new Source("own", true));
    }

    @Test
    void aCoverageFactorIsAboveZero() {
        for (double impossible : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> ofLength(1, 0, impossible));
        }
    }

    /** 0.1 f − 0.1 is nothing at 1 MHz, 1 − 0.1 f nothing at 10 MHz. */
    @Test
    void anUncertaintyMayBeNothingAtAnEndOfItsRange() {
        for (String segment : List.of("constant: -0.1, linear: 0.1", "constant: 1, linear: -0.1")) {
            UncertaintyModel model = new UncertaintyModelReader()
                    .read(
                            "sample.yaml",
                            LimitSamples.text(SOUND)
                                    .replace(
                                            "{ from: 1 MHz, to: 10 MHz, constant: 0.1 }",
                                            "{ from: 1 MHz, to: 10 MHz, " + segment + " }"));
            assertTrue(model.entry("default", Property.NEXT).isPresent());
        }
    }

    @Test
    void theCurrentModelIsTheHighestRevisionInForce() {
        UncertaintyModel first = sound();
        UncertaintyModel second = revised("2", "2026-03-01", "sample-bay");
        UncertaintyModel other = revised("9", "2026-01-01", "other-bay");
        UncertaintyLibrary library = UncertaintyLibrary.of(List.of(second, other, first));
        assertEquals(List.of(other, first, second), library.all());
        assertEquals(Optional.empty(), library.current("sample-bay", LocalDate.of(2025, 12, 31)));
        assertEquals(Optional.of(first), library.current("sample-bay", LocalDate.of(2026, 1, 1)));
        assertEquals(Optional.of(second), library.current("sample-bay", LocalDate.of(2026, 3, 1)));
        assertEquals(
                "there are two uncertainty models sample-bay revision 1; a changed model needs the next revision",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> UncertaintyLibrary.of(List.of(first, other, sound())))
                        .getMessage());
    }

    private static UncertaintyModel revised(String revision, String effective, String id) {
        return new UncertaintyModelReader()
                .read(
                        "sample.yaml",
                        LimitSamples.text(SOUND)
                                .replace("id: sample-bay", "id: " + id)
                                .replace("revision: 1", "revision: " + revision)
                                .replace("2026-01-01", effective));
    }

    @ParameterizedTest
    @CsvSource({
        "SIMPLE_ACCEPTANCE, 0, false, false, 4.2.1",
        "GUARD_BAND_TWO, 1, true, false, 4.2.2",
        "GUARD_BAND_FOUR, 1, true, true, 4.2.3",
    })
    void onlyAGuardBandNeedsAnUncertaintyAndOnlyFourOutcomesAreConditional(
            DecisionRule.Form form, double multiple, boolean needsUncertainty, boolean conditional, String clause) {
        DecisionRule rule = new DecisionRule(form, multiple);
        assertEquals(needsUncertainty, rule.needsUncertainty());
        assertEquals(conditional, rule.isConditional());
        assertEquals(clause, rule.clause());
    }
}
