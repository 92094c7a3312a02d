package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Property;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the newest revisions of the sets to 7 CFR 1755.860, .870 and .890 change, against the regulation (read). */
class UsNewestRevisionsValidationTest {
    private static final Set<Property> MATERIAL = Set.of(
            Property.INSULATION_TENSILE_STRENGTH,
            Property.INSULATION_ELONGATION,
            Property.INSULATION_COMPRESSION,
            Property.STRIP_FORCE,
            Property.JACKET_TENSILE_STRENGTH,
            Property.JACKET_ELONGATION,
            Property.JACKET_THICKNESS);

    private static LimitSet third(String id) {
        return LimitSamples.shipped(id, 3);
    }

    /** The figures, and what is judged, are those of the revision before, which are held against the regulation one by one. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg-revision-2, us-terminating-cable-22awg-revision-3",
        "us-terminating-cable-24awg-revision-2, us-terminating-cable-24awg-revision-3",
        "us-buried-wire-22awg-revision-2, us-buried-wire-22awg-revision-3",
        "us-buried-wire-24awg-revision-2, us-buried-wire-24awg-revision-3",
        "us-filled-t1c-cable-19awg, us-filled-t1c-cable-19awg-revision-2",
        "us-filled-t1c-cable-22awg, us-filled-t1c-cable-22awg-revision-2",
        "us-filled-t1c-cable-24awg, us-filled-t1c-cable-24awg-revision-2"
    })
    void everyFigureIsThatOfTheRevisionBefore(String before, String newest) {
        LimitSet old = LimitSamples.shipped(before);
        LimitSet set = LimitSamples.shipped(newest);

        assertEquals(figures(old), figures(set));
        assertEquals(old.allowance(), set.allowance());
        assertEquals(old.pairs(), set.pairs());
        assertEquals(old.rounding(), set.rounding());
    }

    private static List<String> figures(LimitSet set) {
        return set.requirements().stream()
                .map(requirement -> requirement.id()
                        + requirement.limit()
                        + requirement.unit()
                        + requirement.domain()
                        + requirement.pairs()
                        + requirement.unitPairs()
                        + requirement.scope()
                        + requirement.statistic()
                        + requirement.denominator()
                        + requirement.particulars().sampling()
                        + requirement.particulars().testedLength())
                .toList();
    }

    /**
     * 1755.870(h)(4)(iii): the mean less sigma of near-end crosstalk "for any unit within the cable". Other statistics are of the whole cable
     * or reel: (h)(1)(i) "all pairs in any reel", (h)(1)(ii) "that reel", (h)(2), (h)(3)(i) and (h)(4)(i) "the completed cable", (h)(8)(i)
     * "maximum for any reel".
     */
    @ParameterizedTest
    @ValueSource(strings = {"us-terminating-cable-22awg", "us-terminating-cable-24awg"})
    void nearEndCrosstalkAndNothingElseIsOfEachUnit(String id) {
        Set<String> perUnit = third(id).requirements().stream()
                .filter(requirement -> requirement.particulars().per() == Per.UNIT)
                .map(Requirement::id)
                .collect(Collectors.toSet());

        assertEquals(
                Set.of(
                        "next-within-unit-12-13",
                        "next-within-unit-18-25",
                        "next-adjacent-units-13",
                        "next-adjacent-units-25",
                        "next-nonadjacent-units"),
                perUnit);
    }

    /**
     * 1755.870(m)(6)(i), performance of insulation and jacket material, is a capability test; (m)(5), the tests on all completed cable, names no
     * mechanical one.
     */
    @ParameterizedTest
    @ValueSource(strings = {"us-terminating-cable-22awg", "us-terminating-cable-24awg"})
    void noMechanicalResultIsAskedOfEveryReel(String id) {
        List<Requirement> ofMaterial = third(id).requirements().stream()
                .filter(requirement -> MATERIAL.contains(requirement.property()))
                .toList();

        assertEquals(6 + 2 * 8, ofMaterial.size());
        for (Requirement requirement : ofMaterial) {
            assertTrue(!requirement.particulars().required(), requirement.id());
            String why = requirement.condition().orElseThrow();
            assertTrue(why.contains("(m)(6)(i)") || why.contains("(m)(5)"), why);
        }
        assertEquals(
                Set.of(
                        "conductor-resistance",
                        "resistance-unbalance",
                        "resistance-unbalance-mean",
                        "resistance-unbalance-direction",
                        "mutual-capacitance-mean",
                        "mutual-capacitance-rms-deviation",
                        "capacitance-unbalance-pair-to-pair-rms",
                        "capacitance-unbalance-to-ground-mean",
                        "fext-rms",
                        "fext",
                        "next-within-unit-12-13",
                        "next-within-unit-18-25",
                        "next-adjacent-units-13",
                        "next-adjacent-units-25",
                        "next-nonadjacent-units",
                        "insulation-resistance",
                        "dielectric-withstand",
                        "continuity-faults"),
                third(id).requirements().stream()
                        .filter(requirement -> requirement.particulars().required())
                        .map(Requirement::id)
                        .collect(Collectors.toSet()));
    }

    /** 1755.403(g)(4)(iii)(C), insertion loss at carrier frequencies: At = A20 × [1 + 0.0022 × (t − 20)]. It prints no range. */
    @ParameterizedTest
    @CsvSource({
        "us-buried-wire-22awg-revision-3, insertion-loss, 0, 40",
        "us-buried-wire-24awg-revision-3, insertion-loss, 0, 40",
        "us-filled-t1c-cable-19awg-revision-2, insertion-loss-mean, 0, 40",
        "us-filled-t1c-cable-22awg-revision-2, insertion-loss-mean, 0, 40",
        "us-filled-t1c-cable-24awg-revision-2, insertion-loss-mean, 0, 40"
    })
    void attenuationIsCorrectedByTheRegulationsOwnCoefficient(String file, String id, double lowest, double highest) {
        Requirement loss = LimitSamples.requirement(LimitSamples.shipped(file), id);

        assertEquals(
                List.of(
                        new LawSpec(
                                "cable-loss-temperature",
                                Map.of("coefficient", 0.0022, "lowest", lowest, "highest", highest)),
                        new LawSpec("linear-length", Map.of())),
                loss.laws());
        assertEquals(Optional.empty(), loss.temperatureWindow());
        assertTrue(loss.source().document().contains("1755.403(g)(4)(iii)(C)"));
        assertTrue(loss.particulars().required());
    }

    /** The same paragraph prints 0.0012 per °F; half of its last place is worth 0.00009 per °C. Its note rounds to 1 % for 5.6 °C. */
    @Test
    void theCoefficientsOfBothScalesAgreeWithinTheirRounding() {
        assertEquals(0.0022, 0.0012 * 1.8, 0.00009);
        assertEquals(1, 0.0022 * 5.6 * 100, 0.5);
    }
}
