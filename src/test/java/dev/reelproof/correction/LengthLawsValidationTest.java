package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** The length laws against the figures that the US regulation prints for two lengths. */
class LengthLawsValidationTest {
    private static final double ROUNDING_SLACK = 1e-9;

    // Source: 7 CFR 1755.403, .860, .870 and .890 (read); the paragraph stands in each row, the tolerance is half the
    // last printed
    // place, or a whole one downwards where the regulation cut off.
    @ParameterizedTest(name = "{7}: {1} per {2} = {3} per {4}")
    @CsvFileSource(resources = "/correction/7-cfr-1755-unit-pairs.csv", useHeadersInDisplayName = true)
    void theRegulationsOwnUnitPairsFollowTheLaw(
            String law,
            double value,
            String per,
            double printed,
            String printedPer,
            double step,
            String kept,
            String paragraph) {
        MeasurementConditions fromOneUnitToTheOther = Reel.of(Length.of(1, per), Length.of(1, printedPer));
        double referred = Laws.named(law, Map.of()).correct(value, fromOneUnitToTheOther);

        boolean cut = kept.equals("cut");
        double lowest = printed - (cut ? 0 : step / 2) - ROUNDING_SLACK;
        double highest = printed + (cut ? step : step / 2) + ROUNDING_SLACK;
        assertTrue(
                referred >= lowest && referred <= highest,
                () -> paragraph + ": " + referred + " per " + printedPer + ", printed " + printed);
    }

    // Source: 7 CFR 1755.870(h), 25 pF/1000 ft = 45.3 pF/km (read). The rows above prove a law only if the other law
    // fails them.
    @Test
    void pairToPairUnbalanceIsNotLinearAndUnbalanceToGroundIsNotSquareRoot() {
        MeasurementConditions kilofootToKilometre = Reel.of(Length.of(1, "kft"), Length.of(1, "km"));
        assertEquals(82.0, new LinearLength().correct(25, kilofootToKilometre), 0.05, "far from the 45.3 printed");
        assertEquals(317.0, new SquareRootLength().correct(175, kilofootToKilometre), 0.05, "far from the 574 printed");
    }

    // Source: 7 CFR 1755.860(m)(2), 80 pF/1000 ft = 145 pF/km for an individual pair (read). The practice of half and
    // half (from
    // memory) contradicts it: 145 pF over 1 km become 145 / [½ (3.28084 + √3.28084)] = 145 / 2.54608 over 1000 ft,
    // worked by
    // hand.
    @Test
    void theHalfLinearPracticeContradictsTheRegulationsIndividualLimit() {
        MeasurementConditions kilometreToKilofoot = Reel.of(Length.of(1, "km"), Length.of(1, "kft"));
        assertEquals(145 / 2.54608, new HalfLinearLength().correct(145, kilometreToKilofoot), 1e-3);
        assertEquals(80, new SquareRootLength().correct(145, kilometreToKilofoot), 0.1);
        assertEquals(56.95, new HalfLinearLength().correct(145, kilometreToKilofoot), 0.01, "far from the 80 printed");
    }

    // Arithmetic: the two ways between 1000 ft and 1 km do not undo each other, as the class says: 1/1.0908.
    @Test
    void theHalfLinearPracticeDoesNotUndoItself() {
        HalfLinearLength law = new HalfLinearLength();
        Length kilofoot = Length.of(1, "kft");
        Length kilometre = Length.of(1, "km");
        double there = law.correct(100, Reel.of(kilofoot, kilometre));
        assertEquals(100 / 1.09085, law.correct(there, Reel.of(kilometre, kilofoot)), 1e-3);
    }

    // Source: 7 CFR 1755.870(h)(5), "152 megohm-kilometer (500 megohm-mile)" (read). The two figures disagree: 500
    // megohm-mile is 805
    // megohm-km, as 1755.403(c)(4) prints (read); 152 is 500 megohm-kilofeet. Whoever writes the limit must say which
    // is meant.
    @Test
    void theRegulationsInsulationResistanceOf500MegohmMileIsNot152MegohmKilometres() {
        InsulationResistanceLength law = new InsulationResistanceLength();
        double fromMile = law.correct(500, Reel.of(Length.of(1, "mile"), Length.of(1, "km")));
        double fromKilofoot = law.correct(500, Reel.of(Length.of(1, "kft"), Length.of(1, "km")));

        assertEquals(804.672, fromMile, 1e-9, "500 x 1.609344, exact by definition of the mile");
        assertEquals(152.4, fromKilofoot, 1e-9, "500 x 0.3048, exact by definition of the foot");
        assertTrue(fromMile > 5 * 152, "the printed pair is off by a factor of 5.28");
    }

    // Source: 7 CFR 1755.403(c)(4)(i) (read): reading in megohms multiplied by the length in kilometres.
    @Test
    void insulationResistanceIsTheReadingTimesTheLength() {
        double megohmKilometres =
                new InsulationResistanceLength().correct(4000, Reel.of(Length.ofMetres(305), Length.of(1, "km")));
        assertEquals(1220, megohmKilometres, 1e-9);
    }
}
