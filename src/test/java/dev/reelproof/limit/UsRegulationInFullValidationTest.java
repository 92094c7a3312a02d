package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Temperature;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The second revisions of the sets to 7 CFR 1755.860 and 1755.870 and the sets to 1755.890 against the regulation (read). Figures that it
 * prints twice must convert to each other and round to the metric figure's places: no further tolerance.
 */
class UsRegulationInFullValidationTest {
    private static final double KILOFEET_PER_KILOMETRE = 1 / 0.3048;
    private static final double MILES_PER_KILOMETRE = 1 / 1.609344;
    private static final TemperatureWindow AT_23 = new TemperatureWindow(Temperature.ofCelsius(23), 3);

    private static LimitSet second(String id) {
        return LimitSamples.shipped(id, 2);
    }

    private static Bound.Constant upper(LimitSet set, String id) {
        return (Bound.Constant)
                LimitSamples.requirement(set, id).limit().upper().orElseThrow();
    }

    private static Bound.Constant lower(LimitSet set, String id) {
        return (Bound.Constant)
                LimitSamples.requirement(set, id).limit().lower().orElseThrow();
    }

    private static void assertConverts(Bound.Constant metric, double converted) {
        assertEquals(
                BigDecimal.valueOf(converted).setScale(metric.places(), RoundingMode.HALF_EVEN),
                BigDecimal.valueOf(metric.value()).setScale(metric.places()));
    }

    /** 1755.870(h)(1)(iii): 3.7 micromho/km (6.0 /mile); 1755.860(m)(1)(ii): 2 micromho/km (3.3 /mile); at 23 ± 3 °C. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, 3.7, 6.0",
        "us-terminating-cable-24awg, 3.7, 6.0",
        "us-buried-wire-22awg, 2, 3.3",
        "us-buried-wire-24awg, 2, 3.3"
    })
    void mutualConductance(String id, double perKilometre, double perMile) {
        LimitSet set = second(id);
        Requirement requirement = LimitSamples.requirement(set, "mutual-conductance");

        assertEquals(perKilometre, upper(set, "mutual-conductance").value());
        assertConverts(upper(set, "mutual-conductance"), perMile * MILES_PER_KILOMETRE);
        assertEquals("µS/km", requirement.unit().text());
        assertEquals(Optional.of(AT_23), requirement.temperatureWindow());
    }

    /** 1755.870(h)(2), (h)(3) and 1755.860(m)(2), (m)(3): capacitance unbalances at 23 ± 3 °C. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "us-terminating-cable-22awg",
                "us-terminating-cable-24awg",
                "us-buried-wire-22awg",
                "us-buried-wire-24awg"
            })
    void capacitanceUnbalancesHaveTheirTemperature(String id) {
        List<Requirement> unbalances = second(id).requirements().stream()
                .filter(requirement -> requirement.property() == Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR
                        || requirement.property() == Property.CAPACITANCE_UNBALANCE_TO_GROUND)
                .toList();

        assertEquals(2, unbalances.size());
        for (Requirement unbalance : unbalances) {
            assertEquals(Optional.of(AT_23), unbalance.temperatureWindow());
        }
    }

    /**
     * 1755.870(b)(8)(i) and (v): one fault in 3000 conductor metres (10 000 ft), 6000 m (20 000 ft) to develop a noncompliance, samples of 300
     * m (1000 ft) below 50 pairs and 1500 m (5000 ft) from 50 on. The regulation rounds 1000 ft, 304.8 m, to 300 m throughout.
     */
    @Test
    void faultRateOfAReel() {
        for (String id : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            LimitSet set = second(id);
            Map<String, Double> least = new HashMap<>();
            for (String faults : List.of("insulation-faults-small", "insulation-faults-large")) {
                Requirement requirement = LimitSamples.requirement(set, faults);
                Particulars.TestedLength tested =
                        requirement.particulars().testedLength().orElseThrow();
                least.put(faults, tested.least().metres());
                assertEquals(Limit.atMost(new Bound.Constant(1, 0)), requirement.limit());
                assertEquals(3000, set.referenceLengthOf(requirement).metres());
                assertEquals(6000, tested.leastToReject().metres());
            }
            assertEquals(Map.of("insulation-faults-small", 300.0, "insulation-faults-large", 1500.0), least);
            assertEquals(
                    new PairCount(50, 800),
                    LimitSamples.requirement(set, "insulation-faults-large")
                            .pairs()
                            .orElseThrow());
        }
    }

    /** 1755.870(m)(5)(vii): 50 to 53 nF/km (80 to 85 nF/mile) over the first 100 pairs. */
    @Test
    void hundredPairsMayStandForAll() {
        Particulars.Sampling expected =
                new Particulars.Sampling(100, new Bound.Constant(50, 0), new Bound.Constant(53, 0));
        for (String id : List.of("us-terminating-cable-22awg", "us-terminating-cable-24awg")) {
            List<Requirement> sampled = second(id).requirements().stream()
                    .filter(requirement -> requirement.particulars().sampling().isPresent())
                    .toList();

            assertEquals(
                    List.of("mutual-capacitance-mean", "mutual-capacitance-rms-deviation"),
                    sampled.stream().map(Requirement::id).toList());
            for (Requirement requirement : sampled) {
                assertEquals(expected, requirement.particulars().sampling().orElseThrow());
                assertEquals(List.of(new LawSpec("linear-length", Map.of())), requirement.laws());
                assertEquals(1000, second(id).referenceLengthOf(requirement).metres(), "the average is per kilometre");
            }
        }
        assertConverts(new Bound.Constant(50, 0), 80 * MILES_PER_KILOMETRE);
        assertConverts(new Bound.Constant(53, 0), 85 * MILES_PER_KILOMETRE);
    }

    /** 1755.870 and 1755.860, physical figures; those printed in two units convert. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, insulation-shrinkback, at-most, 9.5, mm",
        "us-terminating-cable-24awg, insulation-cold-bend-failures, at-most, 0, count",
        "us-terminating-cable-24awg, jacket-tensile-retention, at-least, 80, %",
        "us-terminating-cable-24awg, jacket-elongation-retention, at-least, 50, %",
        "us-terminating-cable-24awg, jacket-impact-failures, at-most, 2, count",
        "us-terminating-cable-24awg, jacket-eccentricity, at-most, 55, %",
        "us-terminating-cable-24awg, shield-bond, at-least, 9, N",
        "us-terminating-cable-24awg, shield-bond-mean, at-least, 18, N",
        "us-buried-wire-22awg, conductor-elongation, at-least, 20, %",
        "us-buried-wire-24awg, conductor-elongation, at-least, 16, %",
        "us-buried-wire-24awg, insulation-elongation, at-least, 300, %",
        "us-buried-wire-24awg, insulation-shrinkback, at-most, 10, mm",
        "us-buried-wire-24awg, insulation-cold-bend-failures, at-most, 0, count",
        "us-buried-wire-24awg, inner-jacket-thickness, at-least, 0.5, mm",
        "us-buried-wire-24awg, inner-jacket-eccentricity, at-most, 43, %",
        "us-buried-wire-24awg, jacket-thickness, at-least, 0.64, mm",
        "us-buried-wire-24awg, jacket-eccentricity, at-most, 43, %",
        "us-buried-wire-24awg, jacket-shrinkback, at-most, 5, %",
        "us-buried-wire-24awg, jacket-impact-failures, at-most, 2, count",
        "us-buried-wire-24awg, breaking-strength, at-least, 890, N"
    })
    void physicalFigures(String id, String requirement, String sense, String figure, String unit) {
        Requirement found = LimitSamples.requirement(second(id), requirement);
        Limit limit = found.limit();

        assertEquals(sense, limit.sense());
        assertEquals(figure, limit.lower().or(limit::upper).orElseThrow().formula(1));
        assertEquals(unit, found.unit().text());
        assertTrue(found.source().read());
        assertTrue(!found.particulars().required(), "samples are tested so, not every reel");
    }

    @Test
    void physicalFiguresPrintedInTwoUnitsConvert() {
        double newtonsPerPoundForce = 0.45359237 * 9.80665;
        assertConverts(new Bound.Constant(9.5, 1), 3.0 / 8 * 25.4);
        assertConverts(new Bound.Constant(9, 0), 2 * newtonsPerPoundForce);
        assertConverts(new Bound.Constant(18, 0), 4 * newtonsPerPoundForce);
        assertConverts(new Bound.Constant(890, 0), 200 * newtonsPerPoundForce);
        assertConverts(new Bound.Constant(0.5, 1), 0.020 * 25.4);
        assertConverts(new Bound.Constant(0.64, 2), 0.025 * 25.4);
    }

    /** 1755.870(k)(9) and 1755.860(l)(9): never less than marked, never more than one percent greater. */
    @Test
    void lengthMarking() {
        for (String id : List.of("us-terminating-cable-22awg", "us-buried-wire-24awg")) {
            assertEquals(
                    Limit.between(new Bound.Constant(0, 1), new Bound.Constant(1, 1)),
                    LimitSamples.requirement(second(id), "length-marking-error").limit());
        }
    }

    /** 1755.870(h)(9)(i), 1755.860(n)(1), 1755.890(k)(11)(i): no ground, cross, short or open, in every reel. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "us-terminating-cable-22awg-revision-2",
                "us-buried-wire-24awg-revision-2",
                "us-filled-cable-19awg",
                "us-filled-t1c-cable-24awg"
            })
    void noPairIsBrokenOrTouches(String id) {
        Requirement requirement = LimitSamples.requirement(LimitSamples.shipped(id), "continuity-faults");

        assertEquals(Limit.atMost(new Bound.Constant(0, 0)), requirement.limit());
        assertTrue(requirement.particulars().required());
    }

    /** The regulation gives no figure for "random"; ours refuses a reel in which one conductor is the higher in every pair. */
    @Test
    void theDirectionOfUnbalanceIsOursAndSaysSo() {
        for (String id : List.of("us-terminating-cable-22awg-revision-2", "us-filled-cable-26awg")) {
            Requirement requirement =
                    LimitSamples.requirement(LimitSamples.shipped(id), "resistance-unbalance-direction");

            assertTrue(!requirement.source().read());
            assertTrue(requirement.source().document().contains("No figure is printed"));
            assertTrue(requirement.pairs().orElseThrow().from() >= 12);
        }
    }

    /** 1755.403(c)(4) (read): insulation resistance varies inversely with temperature. */
    @Test
    void aPassOfInsulationResistanceStandsWhenWarmer() {
        for (String id : List.of("us-terminating-cable-22awg", "us-buried-wire-24awg")) {
            assertEquals(
                    Optional.of(new TemperatureWindow(Temperature.ofCelsius(20), 1, true)),
                    LimitSamples.requirement(second(id), "insulation-resistance")
                            .temperatureWindow());
            assertEquals(
                    Optional.of(new TemperatureWindow(Temperature.ofCelsius(20), 1, false)),
                    LimitSamples.requirement(LimitSamples.shipped(id), "insulation-resistance")
                            .temperatureWindow());
        }
    }

    /** What the first revision judges, the second judges by the same figures. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "us-terminating-cable-22awg",
                "us-terminating-cable-24awg",
                "us-buried-wire-22awg",
                "us-buried-wire-24awg"
            })
    void nothingOfTheFirstRevisionIsLost(String id) {
        Set<String> second = second(id).requirements().stream()
                .map(UsRegulationInFullValidationTest::figures)
                .collect(Collectors.toSet());

        for (Requirement requirement : LimitSamples.shipped(id).requirements()) {
            assertTrue(second.contains(figures(requirement)), requirement.id());
        }
        assertEquals(
                LimitSamples.shipped(id).allowance().map(Allowance::steps),
                second(id).allowance().map(Allowance::steps));
        assertEquals(
                LimitSamples.shipped(id).allowance().map(Allowance::ceilings),
                second(id).allowance().map(Allowance::ceilings));
    }

    private static String figures(Requirement requirement) {
        return requirement.id()
                + requirement.limit()
                + requirement.unit()
                + requirement.domain()
                + requirement.pairs()
                + requirement.unitPairs()
                + requirement.scope()
                + requirement.statistic()
                + requirement.denominator();
    }

    /** 1755.890(k)(11)(iii)(C): what no conductor may exceed, ohm/km and ohm/1000 ft. */
    @ParameterizedTest
    @CsvSource({"19, 29.9, 9.1", "22, 60.0, 18.3", "24, 94.5, 28.8", "26, 151.6, 46.2"})
    void resistanceThatNotEvenAVaryingPairMayExceed(int gauge, BigDecimal perKilometre, double perKilofoot) {
        LimitSet set = LimitSamples.shipped("us-filled-cable-" + gauge + "awg");

        assertEquals(
                perKilometre.toPlainString(), upper(set, "conductor-resistance").formula(1));
        assertConverts(upper(set, "conductor-resistance"), perKilofoot * KILOFEET_PER_KILOMETRE);
        assertEquals(7, upper(set, "resistance-unbalance").value());
        assertEquals(3937, upper(set, "capacitance-unbalance-to-ground").value());
        assertConverts(upper(set, "capacitance-unbalance-to-ground"), 1200 * KILOFEET_PER_KILOMETRE);
        assertEquals(2, upper(set, "insulated-conductor-diameter").value());
    }

    /** 1755.890(k)(7)(ii): average attenuation of T1C type cable over 12 pairs at 1576 kHz, dB/km and dB/mile, 20 ± 1 °C. */
    @ParameterizedTest
    @CsvSource({"19, 14.9, 24.0", "22, 21.6, 34.8", "24, 27.2, 43.8"})
    void attenuationOfT1cCable(int gauge, double perKilometre, double perMile) {
        LimitSet set = LimitSamples.shipped("us-filled-t1c-cable-" + gauge + "awg");
        Requirement loss = LimitSamples.requirement(set, "insertion-loss-mean");

        assertEquals(perKilometre, upper(set, "insertion-loss-mean").value());
        assertConverts(upper(set, "insertion-loss-mean"), perMile * MILES_PER_KILOMETRE);
        assertEquals(Statistic.MEAN, loss.statistic());
        assertEquals(new Domain.Spot(1.576), loss.domain());
        assertEquals(13, set.pairs().from());
        assertEquals(Optional.of(new TemperatureWindow(Temperature.ofCelsius(20), 1)), loss.temperatureWindow());
    }

    /** 1755.890(k)(11)(ii): 6-100 pairs 1, 101-300 2, 301-400 3, 401-600 4, 601 and above 6; (a)(2): the largest of each gauge. */
    @Test
    void pairsThatMayVaryInFilledCable() {
        Allowance allowance =
                LimitSamples.shipped("us-filled-cable-24awg").allowance().orElseThrow();

        assertEquals(
                List.of(1, 1, 2, 2, 3, 3, 4, 4, 6, 6),
                IntStream.of(6, 100, 101, 300, 301, 400, 401, 600, 601, 1800)
                        .mapToObj(allowance::pairsThatMayVary)
                        .toList());
        Map<Integer, PairCount> sizes = Map.of(
                19,
                new PairCount(6, 25),
                22,
                new PairCount(6, 1000),
                24,
                new PairCount(6, 1800),
                26,
                new PairCount(25, 2700));
        sizes.forEach((gauge, pairs) -> assertEquals(
                pairs, LimitSamples.shipped("us-filled-cable-" + gauge + "awg").pairs()));
    }

    /** 1755.890(b)(7)(ii), kV while twinning: 19 4.5, 22 3.6, 24 3.0, 26 2.4; 1755.860(b)(7)(ii): 22 6.0, 24 5.0. */
    @ParameterizedTest
    @CsvSource({
        "us-filled-cable-19awg, 4.5 kV",
        "us-filled-cable-22awg, 3.6 kV",
        "us-filled-cable-24awg, 3.0 kV",
        "us-filled-cable-26awg, 2.4 kV",
        "us-filled-t1c-cable-22awg, 3.6 kV",
        "us-buried-wire-22awg-revision-2, 6.0 kV",
        "us-buried-wire-24awg-revision-2, 5.0 kV"
    })
    void theFaultRateOfProductionIsSaidToBeLeftOutWithItsVoltage(String id, String voltage) {
        List<String> why = LimitSamples.shipped(id).leftOut().stream()
                .filter(left -> left.what().contains("1 fault in 12 000 conductor metres"))
                .map(LimitSet.LeftOut::why)
                .toList();

        assertEquals(1, why.size());
        assertTrue(why.get(0).contains(voltage), why.get(0));
    }

    /** 1755.890 points to a standard that is not public: the title and the list of what is left out say so. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "us-filled-cable-19awg",
                "us-filled-cable-22awg",
                "us-filled-cable-24awg",
                "us-filled-cable-26awg",
                "us-filled-t1c-cable-19awg",
                "us-filled-t1c-cable-22awg",
                "us-filled-t1c-cable-24awg"
            })
    void filledCableSaysWhatTheRegulationDoesNotPrint(String id) {
        LimitSet set = LimitSamples.shipped(id);

        assertTrue(set.title().contains("the limits that the regulation itself prints"));
        assertTrue(set.leftOut().stream().anyMatch(left -> left.why().contains("ANSI/ICEA S-84-608-1988")));
        assertTrue(set.requirements().stream()
                .noneMatch(requirement -> requirement.property() == Property.MUTUAL_CAPACITANCE));
    }
}
