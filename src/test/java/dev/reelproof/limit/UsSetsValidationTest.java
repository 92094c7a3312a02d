package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Temperature;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The sets to 7 CFR 1755.870 and 1755.860 against the figures that the regulation prints twice, metric and customary (read). The metric
 * figure must be the customary one converted and rounded to the metric figure's places: no further tolerance. That the pairs agree by
 * one power of the length and no other is what shows which length law the regulation means.
 */
class UsSetsValidationTest {
    private static final double KILOFEET_PER_KILOMETRE = 1 / 0.3048;
    private static final double MILES_PER_KILOMETRE = 1 / 1.609344;

    private static final List<String> ALL = List.of(
            "us-terminating-cable-22awg", "us-terminating-cable-24awg", "us-buried-wire-22awg", "us-buried-wire-24awg");

    private static Requirement requirement(String set, String id) {
        return LimitSamples.requirement(LimitSamples.shipped(set), id);
    }

    private static Bound.Constant upper(String set, String id) {
        return (Bound.Constant) requirement(set, id).limit().upper().orElseThrow();
    }

    private static Bound.Constant lower(String set, String id) {
        return (Bound.Constant) requirement(set, id).limit().lower().orElseThrow();
    }

    private static void assertConverts(Bound.Constant metric, double converted) {
        assertEquals(
                BigDecimal.valueOf(converted).setScale(metric.places(), RoundingMode.HALF_EVEN),
                BigDecimal.valueOf(metric.value()).setScale(metric.places()));
    }

    /** 7 CFR 1755.870(h) and 1755.860(m): conductor resistance in ohm/km and ohm/1000 ft. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, 60.7, 18.5",
        "us-terminating-cable-24awg, 95.1, 29.0",
        "us-buried-wire-22awg, 57.1, 17.4",
        "us-buried-wire-24awg, 90.2, 27.5"
    })
    void conductorResistanceIsLinearInLength(String set, double perKilometre, double perKilofoot) {
        assertEquals(new Bound.Constant(perKilometre, 1), upper(set, "conductor-resistance"));
        assertConverts(upper(set, "conductor-resistance"), perKilofoot * KILOFEET_PER_KILOMETRE);
        assertEquals(
                List.of(
                        new LawSpec("copper-temperature", Map.of("coefficient", 0.0040)),
                        new LawSpec("linear-length", Map.of())),
                requirement(set, "conductor-resistance").laws());
    }

    /** 7 CFR 1755.870(h): rms 45.3 pF/km (25 pF/1000 ft); 1755.860(m): individual 145 pF/km (80 pF/1000 ft). */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, capacitance-unbalance-pair-to-pair-rms, 45.3, 25",
        "us-terminating-cable-24awg, capacitance-unbalance-pair-to-pair-rms, 45.3, 25",
        "us-buried-wire-22awg, capacitance-unbalance-pair-to-pair, 145, 80",
        "us-buried-wire-24awg, capacitance-unbalance-pair-to-pair, 145, 80"
    })
    void pairToPairUnbalanceGoesByTheSquareRootOfLength(
            String set, String id, double perKilometre, double perKilofoot) {
        assertEquals(perKilometre, upper(set, id).value());
        assertConverts(upper(set, id), perKilofoot * Math.sqrt(KILOFEET_PER_KILOMETRE));
        assertEquals(
                List.of(new LawSpec("square-root-length", Map.of())),
                requirement(set, id).laws());
    }

    /** 7 CFR 1755.870(h): average 574 pF/km (175 pF/1000 ft); 1755.860(m): individual 2625 pF/km (800 pF/1000 ft). */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, capacitance-unbalance-to-ground-mean, 574, 175",
        "us-terminating-cable-24awg, capacitance-unbalance-to-ground-mean, 574, 175",
        "us-buried-wire-22awg, capacitance-unbalance-to-ground, 2625, 800",
        "us-buried-wire-24awg, capacitance-unbalance-to-ground, 2625, 800"
    })
    void pairToGroundUnbalanceIsLinearInLength(String set, String id, double perKilometre, double perKilofoot) {
        assertEquals(perKilometre, upper(set, id).value());
        assertConverts(upper(set, id), perKilofoot * KILOFEET_PER_KILOMETRE);
        assertEquals(
                List.of(new LawSpec("linear-length", Map.of())),
                requirement(set, id).laws());
    }

    /** 7 CFR 1755.870(h) and 1755.860(m): far-end crosstalk at 150 kHz in dB/km and dB/1000 ft. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, fext-rms, 68, 73",
        "us-terminating-cable-22awg, fext, 58, 63",
        "us-terminating-cable-24awg, fext-rms, 68, 73",
        "us-terminating-cable-24awg, fext, 58, 63",
        "us-buried-wire-22awg, fext, 58, 63",
        "us-buried-wire-24awg, fext, 58, 63"
    })
    void farEndCrosstalkGoesByTenLogOfLength(String set, String id, double perKilometre, double perKilofoot) {
        assertEquals(perKilometre, lower(set, id).value());
        assertConverts(lower(set, id), perKilofoot - 10 * Math.log10(KILOFEET_PER_KILOMETRE));
        assertEquals(new Domain.Spot(0.15), requirement(set, id).domain());
        assertEquals(
                List.of(new LawSpec("far-end-crosstalk-length", Map.of())),
                requirement(set, id).laws());
    }

    /** 7 CFR 1755.860(m): attenuation at 150 kHz in dB/km and dB/mile, at most and at least, at 20 ± 1 °C. */
    @ParameterizedTest
    @CsvSource({"us-buried-wire-22awg, 6.8, 11.0, 5.0, 8.1", "us-buried-wire-24awg, 8.7, 14.0, 6.6, 10.7"})
    void attenuationOfBuriedWireHasTwoSides(
            String set, double most, double mostPerMile, double least, double leastPerMile) {
        assertEquals(new Bound.Constant(most, 1), upper(set, "insertion-loss"));
        assertEquals(new Bound.Constant(least, 1), lower(set, "insertion-loss"));
        assertConverts(upper(set, "insertion-loss"), mostPerMile * MILES_PER_KILOMETRE);
        assertConverts(lower(set, "insertion-loss"), leastPerMile * MILES_PER_KILOMETRE);
        assertEquals(
                Optional.of(new TemperatureWindow(Temperature.ofCelsius(20), 1)),
                requirement(set, "insertion-loss").temperatureWindow());
    }

    /** 7 CFR 1755.870(h)(1): 12 pairs 52 ± 4 nF/km (83 ± 7 nF/mile), above 52 ± 2 (83 ± 4); 1755.860(m): 52 ± 4 (83 ± 7). */
    @Test
    void averageMutualCapacitanceDependsOnThePairCount() {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            assertEquals(
                    Map.of(
                            new PairCount(12, 12), Limit.between(new Bound.Constant(48, 0), new Bound.Constant(56, 0)),
                            new PairCount(13, 800),
                                    Limit.between(new Bound.Constant(50, 0), new Bound.Constant(54, 0))),
                    limitsByPairs(set, "mutual-capacitance-mean"));
        }
        for (String set : List.of("us-buried-wire-22awg", "us-buried-wire-24awg")) {
            assertEquals(
                    Limit.between(new Bound.Constant(48, 0), new Bound.Constant(56, 0)),
                    requirement(set, "mutual-capacitance-mean").limit());
        }
        assertConverts(new Bound.Constant(52, 0), 83 * MILES_PER_KILOMETRE);
        assertConverts(new Bound.Constant(4, 0), 7 * MILES_PER_KILOMETRE);
        assertConverts(new Bound.Constant(2, 0), 4 * MILES_PER_KILOMETRE);
    }

    private static Map<PairCount, Limit> limitsByPairs(String set, String id) {
        return LimitSamples.shipped(set).requirements().stream()
                .filter(requirement -> requirement.id().equals(id))
                .collect(java.util.stream.Collectors.toMap(
                        requirement -> requirement.pairs().orElseThrow(), Requirement::limit));
    }

    /**
     * 7 CFR 1755.870(h)(5) prints 152 megohm-kilometer as if it were 500 megohm-mile; it is 500 megohm-kilofeet. The set takes the mile,
     * which 7 CFR 1755.403(c)(4) prints as 805 megohm-km.
     */
    @Test
    void insulationResistanceOfTerminatingCableIsTheMileOfTheTwoThatDisagree() {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            Bound.Constant limit = lower(set, "insulation-resistance");

            assertEquals(new Bound.Constant(805, 0), limit);
            assertConverts(limit, 500 / MILES_PER_KILOMETRE);
            assertEquals(
                    "megohm·km",
                    requirement(set, "insulation-resistance").unit().text());
        }
        assertConverts(new Bound.Constant(152, 0), 500 / KILOFEET_PER_KILOMETRE);
    }

    /** 7 CFR 1755.860(m): 1600 megohm-km for 1000 megohm-mile, which is 1609: the regulation rounds to hundreds. */
    @Test
    void insulationResistanceOfBuriedWireIsRoundedToHundreds() {
        for (String set : List.of("us-buried-wire-22awg", "us-buried-wire-24awg")) {
            assertEquals(new Bound.Constant(1600, 0), lower(set, "insulation-resistance"));
        }
        assertEquals(1600, Math.round(1000 / MILES_PER_KILOMETRE / 100) * 100);
    }

    /** 7 CFR 1755.870(h), mean less one standard deviation at 772 kHz: the figures for the units that it prints. */
    @ParameterizedTest
    @CsvSource({
        "WITHIN_UNIT, 12, 56",
        "WITHIN_UNIT, 13, 56",
        "WITHIN_UNIT, 18, 60",
        "WITHIN_UNIT, 25, 60",
        "ADJACENT_UNITS, 13, 65",
        "ADJACENT_UNITS, 25, 66",
        "NONADJACENT_UNITS, 25, 81"
    })
    void nearEndCrosstalkByScopeAndUnit(Scope scope, int unitPairs, double expected) {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            List<Requirement> held = LimitSamples.shipped(set).requirements().stream()
                    .filter(requirement -> requirement.property() == Property.NEXT && requirement.scope() == scope)
                    .filter(requirement -> requirement
                            .unitPairs()
                            .map(pairs -> pairs.holds(unitPairs))
                            .orElse(true))
                    .toList();

            assertEquals(1, held.size());
            assertEquals(
                    Limit.atLeast(new Bound.Constant(expected, 0)), held.get(0).limit());
            assertEquals(Statistic.MEAN_MINUS_SIGMA, held.get(0).statistic());
            assertEquals(new Domain.Spot(0.772), held.get(0).domain());
        }
    }

    /** 7 CFR 1755.870(h): 22 AWG average 1.5 %, individual 4.0 %; 24 AWG 1.5 and 5.0 %. 1755.860(m): individual 5.0 %. */
    @Test
    void resistanceUnbalance() {
        assertEquals(new Bound.Constant(4.0, 1), upper("us-terminating-cable-22awg", "resistance-unbalance"));
        assertEquals(new Bound.Constant(5.0, 1), upper("us-terminating-cable-24awg", "resistance-unbalance"));
        assertEquals(new Bound.Constant(1.5, 1), upper("us-terminating-cable-22awg", "resistance-unbalance-mean"));
        assertEquals(new Bound.Constant(1.5, 1), upper("us-terminating-cable-24awg", "resistance-unbalance-mean"));
        assertEquals(new Bound.Constant(5.0, 1), upper("us-buried-wire-22awg", "resistance-unbalance"));
        assertEquals(new Bound.Constant(5.0, 1), upper("us-buried-wire-24awg", "resistance-unbalance"));
    }

    /** 7 CFR 1755.870(h)(1)(ii): 3.0 %. */
    @Test
    void deviationOfMutualCapacitance() {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            assertEquals(new Bound.Constant(3.0, 1), upper(set, "mutual-capacitance-rms-deviation"));
            assertEquals(
                    "%",
                    requirement(set, "mutual-capacitance-rms-deviation").unit().text());
        }
    }

    /** 7 CFR 1755.870(b)(11) and (g)(4). */
    @ParameterizedTest
    @CsvSource({
        "insulation-tensile-strength, at-least, 16.5, MPa",
        "insulation-elongation, at-least, 125, %",
        "insulation-compression, at-least, 1780, N",
        "strip-force, at-most, 13.3, N",
        "jacket-tensile-strength, at-least, 13.8, MPa",
        "jacket-elongation, at-least, 200, %"
    })
    void mechanicalsOfTerminatingCable(String id, String sense, String figure, String unit) {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            Requirement requirement = requirement(set, id);
            Limit limit = requirement.limit();

            assertEquals(sense, limit.sense());
            assertEquals(figure, limit.lower().or(limit::upper).orElseThrow().formula(1));
            assertEquals(unit, requirement.unit().text());
        }
    }

    /** 7 CFR 1755.870(g)(6): nominal jacket by pair count, average at least 90 % and any spot at least 70 % of it. */
    @ParameterizedTest
    @CsvSource({"12, 1.4", "25, 1.4", "50, 1.5", "100, 1.7", "200, 1.9", "300, 2.2", "400, 2.4", "600, 2.9", "800, 3.3"
    })
    void jacketThicknessByPairCount(int pairs, BigDecimal nominal) {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            assertEquals(
                    0, nominal.multiply(new BigDecimal("0.90")).compareTo(jacket(set, "jacket-thickness-mean", pairs)));
            assertEquals(0, nominal.multiply(new BigDecimal("0.70")).compareTo(jacket(set, "jacket-thickness", pairs)));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"jacket-thickness", "jacket-thickness-mean", "mutual-capacitance-mean"})
    void noPairCountFallsBetweenTheRanges(String id) {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            Map<PairCount, Limit> limits = limitsByPairs(set, id);

            assertTrue(IntStream.rangeClosed(12, 800)
                    .allMatch(pairs -> limits.keySet().stream()
                                    .filter(range -> range.holds(pairs))
                                    .count()
                            == 1));
        }
    }

    private static BigDecimal jacket(String set, String id, int pairs) {
        return limitsByPairs(set, id).entrySet().stream()
                .filter(entry -> entry.getKey().holds(pairs))
                .map(entry ->
                        new BigDecimal(entry.getValue().lower().orElseThrow().formula(1)))
                .findFirst()
                .orElseThrow();
    }

    /** 7 CFR 1755.870(h), allowed variation. 3280 pF/km is 1000 pF/1000 ft cut off, not rounded: 3280.8. */
    @Test
    void allowanceOfTerminatingCable() {
        for (String set : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            Allowance allowance = LimitSamples.shipped(set).allowance().orElseThrow();

            assertEquals(
                    List.of(1, 1, 2, 2, 3, 3, 4, 4, 6, 6),
                    IntStream.of(12, 100, 101, 300, 301, 400, 401, 600, 601, 800)
                            .mapToObj(allowance::pairsThatMayVary)
                            .toList());
            assertEquals(
                    Map.of(
                            Property.CAPACITANCE_UNBALANCE_TO_GROUND, new Bound.Constant(3280, 0),
                            Property.RESISTANCE_UNBALANCE, new Bound.Constant(7, 0),
                            Property.FEXT, new Bound.Constant(52, 0)),
                    allowance.ceilings());
        }
        assertEquals(3280, Math.floor(1000 * KILOFEET_PER_KILOMETRE));
        assertConverts(new Bound.Constant(52, 0), 57 - 10 * Math.log10(KILOFEET_PER_KILOMETRE));
    }

    /** 7 CFR 1755.860 prints no allowance. */
    @Test
    void buriedWireHasNoAllowance() {
        assertEquals(
                Optional.empty(), LimitSamples.shipped("us-buried-wire-22awg").allowance());
        assertEquals(
                Optional.empty(), LimitSamples.shipped("us-buried-wire-24awg").allowance());
    }

    /** 7 CFR 1755.870(h) and 1755.860(m), direct voltages of 3 s; the caution is ours. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, 'conductor to conductor 3.6 kV, shield to core 10 kV'",
        "us-terminating-cable-24awg, 'conductor to conductor 3.0 kV, shield to core 10 kV'",
        "us-buried-wire-22awg, 'conductor to conductor 5.0 kV, core to shield 20 kV'",
        "us-buried-wire-24awg, 'conductor to conductor 4.0 kV, core to shield 20 kV'"
    })
    void highVoltageTestNamesItsVoltagesAndItsDanger(String set, String voltages) {
        Requirement withstand = requirement(set, "dielectric-withstand");

        assertEquals(Limit.atMost(new Bound.Constant(0, 0)), withstand.limit());
        assertTrue(withstand.condition().orElseThrow().contains(voltages));
        assertTrue(withstand.condition().orElseThrow().contains("Caution: high voltage"));
    }

    @Test
    void valuesAreRoundedToThePlacesOfTheLimitAndReferredToOneKilometre() {
        for (String id : ALL) {
            LimitSet set = LimitSamples.shipped(id);

            assertEquals(RoundingRule.TO_THE_PLACES_OF_THE_LIMIT, set.rounding());
            assertEquals(1000, set.referenceLength().metres());
            assertFalse(set.leftOut().isEmpty());
        }
        assertEquals(
                new PairCount(12, 800),
                LimitSamples.shipped("us-terminating-cable-22awg").pairs());
        assertEquals(
                new PairCount(2, 3),
                LimitSamples.shipped("us-buried-wire-22awg").pairs());
    }
}
