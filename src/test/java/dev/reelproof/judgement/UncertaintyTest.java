package dev.reelproof.judgement;

import static dev.reelproof.judgement.Bench.atLeast;
import static dev.reelproof.judgement.Bench.atMost;
import static dev.reelproof.judgement.Bench.everyMegahertzTo;
import static dev.reelproof.judgement.Bench.flat;
import static dev.reelproof.judgement.Bench.law;
import static dev.reelproof.judgement.Bench.model;
import static dev.reelproof.judgement.Bench.requirement;
import static dev.reelproof.judgement.Bench.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.DecisionRule.Form;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleBinaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Uncertainty through corrections and derivations, and what decision rules make of it. */
class UncertaintyTest {
    private static final double ROUNDINGS = 1e-12;
    private static final Domain NONE = new Domain.NoFrequency();
    private static final Domain UP_TO_10_MHZ = new Domain.Range(1, 10);
    private static final DecisionRule TWO_OUTCOMES = new DecisionRule(Form.GUARD_BAND_TWO, 1);
    private static final DecisionRule FOUR_OUTCOMES = new DecisionRule(Form.GUARD_BAND_FOUR, 1);
    private static final Requirement RESISTANCE =
            requirement(Property.CONDUCTOR_RESISTANCE, Statistic.INDIVIDUAL, atMost(9.38, 2), NONE, "ohm/100 m");
    private static final LawSpec COPPER = new LawSpec("copper-temperature", Map.of("coefficient", 0.004));
    private static final Requirement CORRECTED = with(RESISTANCE, COPPER, law("linear-length"));
    private static final Requirement CAPACITANCE =
            requirement(Property.MUTUAL_CAPACITANCE, Statistic.INDIVIDUAL, atMost(5.6, 1), NONE, "nF/100 m");

    /** All parts are expanded with k = 2: u is half of what stands here. */
    private static final String FIGURES =
            """
            temperature: { constant: 1 °C, source: own, read: true }
            length: { constant: 0 m, proportional: 1 %, source: own, read: true }
            classes:
              - class: default
                properties:
                  - { property: conductor-resistance, unit: ohm, constant: 0.06, source: own, read: true }
                  - { property: mutual-capacitance, unit: nF, constant: 0.2, source: own, read: true }
                  - { property: insertion-loss, unit: dB, constant: 0.4, source: own, read: true }
                  - { property: next, unit: dB, constant: 1, source: own, read: true }
                  - { property: propagation-delay, unit: ns, constant: 3, source: own, read: true }
              - class: bridge
                properties:
                  - { property: conductor-resistance, unit: ohm, constant: 0.002, source: own, read: true }
            """;

    /** All readings of one property err alike. */
    private static final UncertaintyModel MODEL = model(FIGURES);

    /** Each reading errs for itself. */
    private static final UncertaintyModel INDEPENDENT =
            model(FIGURES.replaceAll("(property: [^,]+, unit)", "correlation: 0, $1"));

    private static Bench resistance(Requirement requirement, double value, String unit) {
        return new Bench()
                .pairs(1)
                .model(MODEL)
                .require(requirement)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), value, unit)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), value / 2, unit);
    }

    private static Uncertainty uncertainty(Bench bench) {
        return bench.only().figure().uncertainty();
    }

    @Test
    void instrumentTemperatureAndLengthEachContributeByTheLawsDerivative() {
        // 300 m at 30 °C: R0 = R · 1/1.04 · 1/3; ∂/∂R = 1/3.12, ∂/∂t = −R0 · 0.004/1.04, ∂/∂L = −R0/300.
        Bench bench = resistance(CORRECTED, 28, "ohm").reel(300, 30);
        double value = 28 / 3.12;
        double byInstrument = 0.03 / 3.12;
        double byTemperature = 0.5 * value * 0.004 / 1.04;
        double byLength = 1.5 * value / 300;
        double expanded =
                2 * Math.sqrt(byInstrument * byInstrument + byTemperature * byTemperature + byLength * byLength);

        Uncertainty found = uncertainty(bench);

        assertEquals(expanded, found.expanded(), ROUNDINGS);
        assertEquals(2, found.coverageFactor());
        List<Step> steps = bench.only().figure().steps().stream()
                .filter(step -> step.title().equals("uncertainty"))
                .toList();
        assertEquals(3, steps.size());
        assertEquals(byInstrument, steps.get(0).value(), ROUNDINGS);
        assertTrue(
                steps.get(0).detail().contains("reading 28.0 ohm: 0.06 ohm, k = 2"),
                steps.get(0).detail());
        assertEquals(byTemperature, steps.get(1).value(), ROUNDINGS);
        assertEquals(byLength, steps.get(2).value(), ROUNDINGS);
        assertTrue(steps.stream().allMatch(step -> step.source().startsWith("own")));
    }

    @Test
    void withoutAModelSimpleAcceptanceDecidesAllTheSame() {
        Bench bench = new Bench()
                .pairs(1)
                .require(CAPACITANCE)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5.5, "nF");
        assertEquals(Outcome.PASS, bench.only().outcome());
        assertNull(uncertainty(bench));
        assertNull(bench.judge().uncertaintyModel());
        assertEquals(
                new Judgement.Model("own", 1, MODEL.sha256()),
                bench.model(MODEL).judge().uncertaintyModel());
    }

    @Test
    void aModelChangesNoVerdictOfSimpleAcceptance() {
        for (double value : new double[] {28, 29.26, 29.27, 35}) {
            Finding without = new Bench()
                    .pairs(1)
                    .reel(300, 30)
                    .require(CORRECTED)
                    .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), value, "ohm")
                    .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), value / 2, "ohm")
                    .only();
            Finding with = resistance(CORRECTED, value, "ohm").reel(300, 30).only();
            assertEquals(without.outcome(), with.outcome());
            assertEquals(without.figure().margin(), with.figure().margin());
            assertEquals(without.figure().value(), with.figure().value());
        }
    }

    @ParameterizedTest
    @CsvSource({
        // U = 0.2 nF at 100 m without a law
        "5.3, PASS, PASS, PASS",
        "5.4, PASS, PASS, PASS",
        "5.41, PASS, FAIL, CONDITIONAL_PASS",
        "5.6, PASS, FAIL, CONDITIONAL_PASS",
        "5.61, FAIL, FAIL, CONDITIONAL_FAIL",
        "5.8, FAIL, FAIL, CONDITIONAL_FAIL",
        "5.81, FAIL, FAIL, FAIL"
    })
    void aGuardBandDecidesByTheUncertainty(double value, Outcome simple, Outcome two, Outcome four) {
        Bench bench = new Bench()
                .pairs(1)
                .model(MODEL)
                .require(CAPACITANCE)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), value, "nF");
        assertEquals(simple, bench.only().outcome());
        assertEquals(two, bench.rule(TWO_OUTCOMES).only().outcome());
        assertEquals(four, bench.rule(FOUR_OUTCOMES).only().outcome());
        assertEquals(
                four.rejects() ? Verdict.REJECTED : Verdict.ACCEPTED,
                bench.judge().verdict());
        assertEquals(four == Outcome.CONDITIONAL_PASS, bench.judge().isConditional());
        assertEquals(5.6 - value, bench.only().figure().margin(), ROUNDINGS, "the margin is to the limit itself");
    }

    @Test
    void withoutAnUncertaintyAGuardBandTestsNothing() {
        Bench bench = new Bench()
                .pairs(1)
                .require(CAPACITANCE)
                .rule(TWO_OUTCOMES)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5.0, "nF");
        assertEquals(Outcome.NOT_TESTED, bench.only().outcome());
        assertEquals(
                "no uncertainty for the guard band: no uncertainty model is in force",
                bench.only().reason());
        assertEquals(0.6, bench.only().figure().margin(), ROUNDINGS);

        Finding noClass = bench.model(MODEL)
                .equipment(new Equipment("c-1", null, Set.of(), "meter"))
                .only();
        assertEquals(Outcome.NOT_TESTED, noClass.outcome());
        assertTrue(noClass.reason().contains("own revision 1 has no class 'meter'"), noClass.reason());

        Finding noEntry =
                bench.equipment(new Equipment("c-1", null, Set.of(), "bridge")).only();
        assertTrue(noEntry.reason().contains("no entry for mutual-capacitance in class 'bridge'"), noEntry.reason());
        assertEquals(Verdict.INCOMPLETE, bench.judge().verdict());
    }

    @Test
    void theClassIsThatOfTheInstrumentThatMeasured() {
        Bench bench = resistance(RESISTANCE, 9, "ohm");
        Equipment bridge = new Equipment("b-1", null, Set.of(Property.CONDUCTOR_RESISTANCE), "bridge");
        Equipment other = new Equipment("na-1", null, Set.of(Property.NEXT), "analyser");
        Equipment any = new Equipment("m-1", null, Set.of());
        assertEquals(0.06, uncertainty(bench).expanded(), ROUNDINGS);
        assertEquals(0.002, uncertainty(bench.equipment(bridge, other)).expanded(), ROUNDINGS);
        assertEquals(
                0.002, uncertainty(bench.equipment(any, bridge)).expanded(), ROUNDINGS, "who names it, measured it");
        assertEquals(
                0.06,
                uncertainty(bench.equipment(bridge, new Equipment("m-2", null, Set.of(Property.CONDUCTOR_RESISTANCE))))
                        .expanded(),
                ROUNDINGS,
                "of two that may have, the less sure");
    }

    @Test
    void temperatureAndLengthCancelInAnUnbalance() {
        Requirement unbalance = with(
                requirement(Property.RESISTANCE_UNBALANCE, Statistic.INDIVIDUAL, atMost(5, 0), NONE, "%"),
                COPPER,
                law("linear-length"));
        Bench bench = new Bench()
                .pairs(1)
                .reel(300, 30)
                .model(INDEPENDENT)
                .require(unbalance)
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.A), 28, "ohm")
                .read(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(1, Conductor.B), 27.5, "ohm");
        // ∂/∂a = 100/b, ∂/∂b = −100 a/b², whatever length and temperature they are referred to.
        double byA = 0.03 * 100 / 27.5;
        double byB = 0.03 * 100 * 28 / (27.5 * 27.5);
        assertEquals(2 * Math.hypot(byA, byB), uncertainty(bench).expanded(), 1e-9);
        assertEquals(
                2 * (byB - byA),
                uncertainty(bench.model(MODEL)).expanded(),
                1e-9,
                "a bridge that reads both wrong alike hardly moves the difference");
    }

    @Test
    void aPowerSumsPartsErrAlikeOrEachForItself() {
        Requirement powerSum =
                requirement(Property.PS_NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(35, 1, 10)), UP_TO_10_MHZ, "dB");
        Bench bench = new Bench().pairs(3).model(MODEL).require(powerSum);
        for (int[] pair : new int[][] {{1, 2}, {1, 3}, {2, 3}}) {
            bench.sweep(
                    Property.NEXT, Subject.ofCombination(pair[0], pair[1]).at(End.NEAR), everyMegahertzTo(10), f -> 40);
        }
        // Two equal parts, half of each: 1 dB · (½ + ½) where one analyser reads both, 1 dB · √(¼ + ¼) where they are
        // independent.
        assertEquals(1, uncertainty(bench).expanded(), 1e-9);
        assertEquals(Math.sqrt(0.5), uncertainty(bench.model(INDEPENDENT)).expanded(), 1e-9);
    }

    @Test
    void theMeasuredLossOfTheNearEndLawContributes() {
        Requirement next = with(
                requirement(Property.NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(30, 1, 10)), UP_TO_10_MHZ, "dB"),
                law("near-end-crosstalk-length"));
        Bench bench = new Bench().pairs(2).reel(50, 20).model(MODEL).require(next);
        for (int pair = 1; pair <= 2; pair++) {
            bench.sweep(Property.INSERTION_LOSS, Subject.ofPair(pair), everyMegahertzTo(10), f -> 2);
        }
        bench.sweep(Property.NEXT, Subject.ofCombination(1, 2).at(End.NEAR), everyMegahertzTo(10), f -> 40);
        // N0 = N − 10 log10 {[1 − 10^(−2A/5)] / [1 − 10^(−A/5)]} with A the loss of 50 m: of A and N alone, the length
        // drops out
        // but for L0/L in the numerator.
        DoubleBinaryOperator law = (loss, metres) ->
                40 - 10 * Math.log10((1 - Math.pow(10, -loss * 100 / metres / 5)) / (1 - Math.pow(10, -loss / 5)));
        double byLoss = (law.applyAsDouble(2 + 1e-5, 50) - law.applyAsDouble(2 - 1e-5, 50)) / 2e-5 * 0.2;
        double byLength = (law.applyAsDouble(2, 50 + 1e-4) - law.applyAsDouble(2, 50 - 1e-4)) / 2e-4 * 0.25;
        double expected = 2 * Math.sqrt(0.5 * 0.5 + byLoss * byLoss + byLength * byLength);
        assertEquals(expected, uncertainty(bench).expanded(), 1e-7);
    }

    @Test
    void theMeanOfManyIsNoSurerThanOne() {
        Requirement mean = requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atMost(5.6, 1), NONE, "nF/100 m");
        Bench bench = new Bench().pairs(4).model(MODEL).require(mean);
        for (int pair = 1; pair <= 4; pair++) {
            bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(pair), 5 + 0.1 * pair, "nF");
        }
        assertEquals(0.2, uncertainty(bench).expanded(), ROUNDINGS);
        assertEquals(Outcome.PASS, bench.rule(FOUR_OUTCOMES).only().outcome());
        assertEquals(
                Outcome.CONDITIONAL_PASS,
                bench.rule(new DecisionRule(Form.GUARD_BAND_FOUR, 2)).only().outcome());
    }

    @Test
    void theSkewOfTwoPairsHasTheUncertaintyOfBoth() {
        Requirement skew = requirement(
                Property.DELAY_SKEW, Statistic.INDIVIDUAL, Limit.atMost(flat(45, 1, 10)), UP_TO_10_MHZ, "ns");
        Bench bench = new Bench().pairs(3).model(INDEPENDENT).require(skew);
        for (int pair = 1; pair <= 3; pair++) {
            double delay = 480 + 10 * pair;
            bench.sweep(Property.PROPAGATION_DELAY, Subject.ofPair(pair), everyMegahertzTo(10), f -> delay);
        }
        assertEquals(20, bench.only().figure().value(), ROUNDINGS);
        assertEquals(3 * Math.sqrt(2), uncertainty(bench).expanded(), 1e-9);
        assertEquals(0, uncertainty(bench.model(MODEL)).expanded(), 1e-9, "what all err alike is in no difference");
    }

    @Test
    void theWorstPlaceIsWhereTheMarginLessTheGuardBandIsLeast() {
        UncertaintyModel rising = model(
                """
                temperature: { constant: 0 °C, source: own, read: true }
                length: { constant: 0 m, source: own, read: true }
                classes:
                  - class: default
                    properties:
                      - property: return-loss
                        unit: dB
                        segments: [{ from: 1 MHz, to: 10 MHz, linear: 0.3 }]
                        source: own
                        read: true
                """);
        Requirement returnLoss = requirement(
                Property.RETURN_LOSS, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB");
        Bench bench = new Bench().pairs(1).model(rising).require(returnLoss);
        bench.sweep(
                Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), everyMegahertzTo(10), f -> f == 2 ? 21.5 : 22);
        assertEquals(2.0, bench.only().figure().megahertz(), "simple acceptance: the least margin");
        Finding guarded = bench.rule(FOUR_OUTCOMES).only();
        assertEquals(10.0, guarded.figure().megahertz());
        assertEquals(2, guarded.figure().margin(), ROUNDINGS);
        assertEquals(Outcome.CONDITIONAL_PASS, guarded.outcome());
    }

    @Test
    void theSeverestOutcomeNamesThePlace() {
        // At 10 MHz U is 3 and the margin 0.5: least margin less guard band, yet within the limit. At 1 MHz U is 0.3
        // and the margin −0.2.
        UncertaintyModel rising = model(
                """
                temperature: { constant: 0 °C, source: own, read: true }
                length: { constant: 0 m, source: own, read: true }
                classes:
                  - class: default
                    properties:
                      - property: return-loss
                        unit: dB
                        segments: [{ from: 1 MHz, to: 10 MHz, linear: 0.3 }]
                        source: own
                        read: true
                """);
        Requirement returnLoss = requirement(
                Property.RETURN_LOSS, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB");
        Bench bench = new Bench().pairs(1).model(rising).rule(FOUR_OUTCOMES).require(returnLoss);
        bench.sweep(
                Property.RETURN_LOSS,
                Subject.ofPair(1).at(End.NEAR),
                everyMegahertzTo(10),
                f -> f == 1 ? 19.8 : f == 10 ? 20.5 : 30);
        assertEquals(Outcome.CONDITIONAL_FAIL, bench.only().outcome());
        assertEquals(1.0, bench.only().figure().megahertz());
        assertEquals(Verdict.REJECTED, bench.judge().verdict());
    }

    @Test
    void aRequirementMayKeepARuleOfItsOwn() {
        Requirement withstand =
                requirement(Property.DIELECTRIC_WITHSTAND, Statistic.INDIVIDUAL, atMost(0, 0), NONE, "count");
        Bench bench = new Bench()
                .pairs(1)
                .model(MODEL)
                .rule(TWO_OUTCOMES)
                .read(Property.DIELECTRIC_WITHSTAND, Subject.ofReel(), 0, "count");
        assertEquals(Outcome.NOT_TESTED, bench.require(withstand).only().outcome());
        Requirement simple = RequirementBuilder.like(withstand)
                .decisionRule(DecisionRule.SIMPLE_ACCEPTANCE)
                .build();
        Finding finding = new Bench()
                .pairs(1)
                .rule(TWO_OUTCOMES)
                .read(Property.DIELECTRIC_WITHSTAND, Subject.ofReel(), 0, "count")
                .require(simple)
                .only();
        assertEquals(Outcome.PASS, finding.outcome());
        assertEquals(DecisionRule.SIMPLE_ACCEPTANCE, finding.decisionRule());
    }

    @Test
    void pairsThatMayVaryAreChosenByTheGuardBandToo() {
        Requirement capacitance =
                requirement(Property.MUTUAL_CAPACITANCE, Statistic.INDIVIDUAL, atMost(5.6, 1), NONE, "nF/100 m");
        Bench bench = new Bench()
                .pairs(3)
                .model(MODEL)
                .rule(TWO_OUTCOMES)
                .mayVary(1, Map.of(Property.MUTUAL_CAPACITANCE, new Bound.Constant(6, 0)))
                .require(capacitance);
        bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5.0, "nF");
        bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(2), 5.5, "nF");
        bench.read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(3), 5.1, "nF");
        assertEquals(Outcome.PASS, bench.only().outcome());
        assertEquals(List.of(2), bench.only().varyingPairs());
    }

    @net.jqwik.api.Property(tries = 200)
    void aUnitChangesNeitherUncertaintyNorOutcome(
            @ForAll @DoubleRange(min = 8.5, max = 9.8) @Scale(6) double per100Metres,
            @ForAll @DoubleRange(min = 50, max = 1000) @Scale(3) double metres,
            @ForAll @DoubleRange(min = 0, max = 40) @Scale(2) double celsius) {
        Finding whole = resistance(CORRECTED, per100Metres * metres / 100, "ohm")
                .reel(metres, celsius)
                .rule(FOUR_OUTCOMES)
                .only();
        Finding perKilometre = resistance(CORRECTED, per100Metres * 10, "ohm/km")
                .reel(metres, celsius)
                .rule(FOUR_OUTCOMES)
                .only();
        Finding perThousandFeet = resistance(CORRECTED, per100Metres * 3.048, "ohm/kft")
                .reel(metres, celsius)
                .rule(FOUR_OUTCOMES)
                .only();
        double expected = whole.figure().uncertainty().expanded();
        assertEquals(expected, perKilometre.figure().uncertainty().expanded(), expected * 1e-9);
        assertEquals(expected, perThousandFeet.figure().uncertainty().expanded(), expected * 1e-9);
        assertEquals(whole.outcome(), perKilometre.outcome());
        assertEquals(whole.outcome(), perThousandFeet.outcome());
    }

    @net.jqwik.api.Property(tries = 200)
    void aGreaterReadingHasALesserMarginAndProbabilityAndNoBetterOutcome(
            @ForAll @DoubleRange(min = 24, max = 32) @Scale(6) double reading,
            @ForAll @DoubleRange(min = 0.001, max = 2) @Scale(6) double more) {
        Finding less = resistance(CORRECTED, reading, "ohm")
                .reel(300, 30)
                .rule(FOUR_OUTCOMES)
                .only();
        Finding greater = resistance(CORRECTED, reading + more, "ohm")
                .reel(300, 30)
                .rule(FOUR_OUTCOMES)
                .only();
        assertTrue(greater.figure().margin() < less.figure().margin());
        assertTrue(greater.figure().uncertainty().probabilityOfConformity()
                <= less.figure().uncertainty().probabilityOfConformity());
        assertTrue(greater.outcome().compareTo(less.outcome()) >= 0);
        assertTrue((less.figure().margin() >= 0) == (less.figure().uncertainty().probabilityOfConformity() >= 0.5));
    }

    @Test
    void aLowerLimitIsGuardedFromTheOtherSide() {
        Requirement least =
                requirement(Property.MUTUAL_CAPACITANCE, Statistic.INDIVIDUAL, atLeast(5.0, 1), NONE, "nF/100 m");
        Bench bench = new Bench()
                .pairs(1)
                .model(MODEL)
                .rule(FOUR_OUTCOMES)
                .require(least)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 4.9, "nF");
        assertEquals(Outcome.CONDITIONAL_FAIL, bench.only().outcome());
        assertEquals(0.1586552539, bench.only().figure().uncertainty().probabilityOfConformity(), 1e-9, "one u beyond");
    }

    // ---- where the model or a law says nothing

    private static final UncertaintyModel UP_TO_5_MHZ = model(
            """
            temperature: { constant: 0 °C, source: own, read: true }
            length: { constant: 0 m, source: own, read: true }
            classes:
              - class: default
                properties:
                  - property: return-loss
                    unit: dB
                    segments: [{ from: 1 MHz, to: 5 MHz, constant: 1 }]
                    source: own
                    read: true
            """);

    /** The values from 6 MHz on have no uncertainty: that is not an uncertainty of nothing. */
    @Test
    void beyondTheFrequenciesOfTheModelAGuardBandTestsNothing() {
        Bench bench = new Bench()
                .pairs(1)
                .model(UP_TO_5_MHZ)
                .rule(TWO_OUTCOMES)
                .require(requirement(
                        Property.RETURN_LOSS, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB"))
                .sweep(Property.RETURN_LOSS, Subject.ofPair(1).at(End.NEAR), everyMegahertzTo(10), f -> 25);
        Finding finding = bench.only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(
                finding.reason()
                        .startsWith(
                                "no uncertainty for the guard band: uncertainty model own revision 1, class 'default',"
                                        + " says nothing of return-loss at 6.0 MHz"),
                finding.reason());
    }

    @Test
    void aStatisticWithoutAnUncertaintyIsNotDecidedByAGuardBand() {
        Requirement mean = requirement(Property.MUTUAL_CAPACITANCE, Statistic.MEAN, atMost(5.6, 1), NONE, "nF/100 m");
        Finding finding = new Bench()
                .pairs(1)
                .model(UP_TO_5_MHZ)
                .rule(TWO_OUTCOMES)
                .require(mean)
                .read(Property.MUTUAL_CAPACITANCE, Subject.ofPair(1), 5, "nF")
                .only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().contains("no entry for mutual-capacitance"), finding.reason());
        assertEquals(0.6, finding.figure().margin(), ROUNDINGS);
    }

    private static Bench nearEnd(String lossEntry) {
        UncertaintyModel ofTheLoss = model(
                """
                temperature: { constant: 0 °C, source: own, read: true }
                length: { constant: 0 m, source: own, read: true }
                classes:
                  - class: default
                    properties:
                      - { property: next, unit: dB, constant: 1, source: own, read: true }
                %s
                """
                        .formatted(lossEntry));
        Bench bench = new Bench().reel(50, 20).model(ofTheLoss);
        for (int pair = 1; pair <= 3; pair++) {
            bench.sweep(Property.INSERTION_LOSS, Subject.ofPair(pair), everyMegahertzTo(10), f -> 2);
            for (int partner = pair + 1; partner <= 3; partner++) {
                bench.sweep(
                        Property.NEXT,
                        Subject.ofCombination(pair, partner).at(End.NEAR),
                        everyMegahertzTo(10),
                        f -> 40);
            }
        }
        return bench;
    }

    private static final Requirement NEAR_END_NEXT = with(
            requirement(Property.NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB"),
            law("near-end-crosstalk-length"));
    private static final Requirement NEAR_END_SUM = with(
            requirement(Property.PS_NEXT, Statistic.INDIVIDUAL, Limit.atLeast(flat(20, 1, 10)), UP_TO_10_MHZ, "dB"),
            law("near-end-crosstalk-length"));
    private static final String LOSS_BY_A_TENTH =
            "      - { property: insertion-loss, unit: dB, proportional: 10 %, source: own, read: true }";

    @Test
    void aLawsLossWithoutAnUncertaintyLeavesTheValueWithoutOne() {
        Finding finding =
                nearEnd("").pairs(3).rule(TWO_OUTCOMES).require(NEAR_END_NEXT).only();
        assertEquals(Outcome.NOT_TESTED, finding.outcome());
        assertTrue(finding.reason().contains("no entry for insertion-loss"), finding.reason());
    }

    /**
     * N0 = N − 10 log10 {[1 − 10^(−2A/5)] / [1 − 10^(−A/5)]} where L is half of L0. The loss A of 2 dB, read to a tenth of itself, is
     * that of the one disturbed pair: in its power sum it counts once and whole, however many parts there are.
     */
    @Test
    void theLossOfAPairIsOneQuantityInAllPartsOfItsPowerSum() {
        double byLoss = 10 * Math.log10((1 - Math.pow(10, -2 * 2.00001 / 5)) / (1 - Math.pow(10, -2.00001 / 5)))
                - 10 * Math.log10((1 - Math.pow(10, -2 * 1.99999 / 5)) / (1 - Math.pow(10, -1.99999 / 5)));
        double ofLoss = byLoss / 2e-5 * 0.1;
        Bench bench = nearEnd(LOSS_BY_A_TENTH).pairs(3);
        assertEquals(
                2 * Math.hypot(0.5, ofLoss),
                uncertainty(bench.require(NEAR_END_NEXT)).expanded(),
                1e-7);
        assertEquals(
                2 * Math.hypot(0.5, ofLoss),
                uncertainty(nearEnd(LOSS_BY_A_TENTH).pairs(3).require(NEAR_END_SUM))
                        .expanded(),
                1e-7);
    }

    /** NEXT told for 100 m needs no law, but what was read of the 30 m is not known without the loss. */
    @Test
    void whereTheLawGivesNoDerivativeThereIsNoUncertainty() {
        for (Statistic statistic : new Statistic[] {Statistic.INDIVIDUAL, Statistic.MEAN}) {
            Requirement next = with(
                    requirement(Property.NEXT, statistic, atLeast(40, 0), new Domain.Spot(5), "dB"),
                    law("near-end-crosstalk-length"));
            Bench bench = new Bench()
                    .pairs(2)
                    .reel(30, 20)
                    .model(MODEL)
                    .require(next)
                    .sweep(
                            Property.NEXT,
                            Subject.ofCombination(1, 2).at(End.NEAR),
                            everyMegahertzTo(10),
                            f -> 60,
                            "dB/100 m");
            assertEquals(Outcome.PASS, bench.only().outcome());
            assertNull(uncertainty(bench));
            assertEquals(Outcome.NOT_TESTED, bench.rule(TWO_OUTCOMES).only().outcome());
        }
    }

    // ---- what a statistic and a count are known to

    /** In dB the rms of the crosstalk ratios goes by the shares of the ratios' squares, which add up to one. */
    @Test
    void theRmsOfLevelsIsAsSureAsItsParts() {
        Requirement rms = requirement(Property.NEXT, Statistic.RMS, atLeast(40, 0), new Domain.Spot(5), "dB");
        Bench bench = new Bench().pairs(3).model(MODEL).require(rms);
        for (int[] pair : new int[][] {{1, 2}, {1, 3}, {2, 3}}) {
            bench.sweep(
                    Property.NEXT,
                    Subject.ofCombination(pair[0], pair[1]).at(End.NEAR),
                    everyMegahertzTo(10),
                    f -> 50 + 10 * pair[0]);
        }
        assertEquals(1, uncertainty(bench).expanded(), 1e-9);
        Step together = steps(bench.only(), "uncertainty").get(0);
        assertEquals(0.5, together.value(), 1e-9);
        assertTrue(
                together.detail()
                        .startsWith("3 readings of next, all readings of one result err alike (correlation 1), "
                                + "what they err in common: instrument of class 'default', next of pair 1 and pair 2"),
                together.detail());
        assertTrue(together.source().startsWith("own"), together.source());
    }

    @Test
    void aCountedShareHasTheUncertaintyThatTheModelGivesIt() {
        UncertaintyModel ofShares = model(
                """
                temperature: { constant: 1 °C, source: own, read: true }
                length: { constant: 0 m, source: own, read: true }
                classes:
                  - class: default
                    properties:
                      - { property: resistance-unbalance-direction, unit: '%', constant: 4, source: own, read: true }
                """);
        Requirement direction =
                requirement(Property.RESISTANCE_UNBALANCE_DIRECTION, Statistic.INDIVIDUAL, atMost(99, 0), NONE, "%");
        assertEquals(
                4, uncertainty(resistance(direction, 9, "ohm").model(ofShares)).expanded(), ROUNDINGS);
    }

    // ---- the steps

    private static List<Step> steps(Finding finding, String title) {
        return finding.figure().steps().stream()
                .filter(step -> step.title().equals(title))
                .toList();
    }

    @Test
    void theGuardBandIsAStepWhereTheRuleHasOne() {
        Bench bench = resistance(CORRECTED, 28, "ohm").reel(300, 30);
        assertEquals(List.of(), steps(bench.only(), "guard band"));
        Finding guarded = bench.rule(TWO_OUTCOMES).only();
        assertEquals(
                guarded.figure().uncertainty().expanded(),
                steps(guarded, "guard band").get(0).value(),
                ROUNDINGS);
    }

    @Test
    void everyShareSaysWhatItIsOf() {
        List<Step> shares = steps(resistance(CORRECTED, 28, "ohm").reel(300, 30).only(), "uncertainty");
        assertTrue(
                shares.get(0)
                        .detail()
                        .startsWith(
                                "instrument of class 'default', conductor-resistance of pair 1, conductor a, reading 28.0"),
                shares.get(0).detail());
        // by 1/(1 + 0.004 · 10) for the temperature and 1/3 for the length
        assertTrue(
                shares.get(0).detail().endsWith("standard uncertainty 0.03 ohm, derivative 0.320513"),
                shares.get(0).detail());
        assertTrue(
                shares.get(1).detail().startsWith("temperature of the cable, 30.0 °C: 1 °C, k = 2"),
                shares.get(1).detail());
        assertTrue(
                shares.get(2).detail().startsWith("length of the reel, 300.0 m: 1 % of the reading, k = 2"),
                shares.get(2).detail());
    }

    /** 28 ohm of 300 m sent as 93.33… ohm/km: the same reading, and the same shares. */
    @Test
    void aValueSentPerLengthIsBroughtBackToWhatWasRead() {
        Finding whole = resistance(CORRECTED, 28, "ohm").reel(300, 30).only();
        Finding perKilometre =
                resistance(CORRECTED, 28 / 0.3, "ohm/km").reel(300, 30).only();
        List<Step> expected = steps(whole, "uncertainty");
        List<Step> found = steps(perKilometre, "uncertainty");
        assertEquals(expected.size(), found.size());
        for (int i = 0; i < found.size(); i++) {
            assertEquals(expected.get(i).value(), found.get(i).value(), 1e-9);
        }
    }

    @Test
    void anUncertaintyIsNothingOrMoreAndAProbabilityFromNoneToOne() {
        assertEquals(1, new Uncertainty(0, 2, 1).probabilityOfConformity());
        assertEquals(0, new Uncertainty(0, 2, 0).probabilityOfConformity());
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(-0.1, 2, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(0.1, 0, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(Double.NaN, 2, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(0.1, 2, 1.1));
        assertThrows(IllegalArgumentException.class, () -> new Uncertainty(0.1, 2, -0.1));
    }
}
