package dev.reelproof.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.wording.Wording;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Bay, instrument, technician and day of test are suspects too, and are named first where they explain the failures as well. */
class TestCauseTest {
    private static final Exposure BAY = new Exposure(Factor.STATION, "bay-1");
    private static final Exposure OTHER_BAY = new Exposure(Factor.STATION, "bay-2");
    private static final Exposure LOT = new Exposure(Factor.LOT, "PE-1");
    private static final Exposure MACHINE = new Exposure(Factor.MACHINE, "INS-1");

    private final List<TestedReel> reels = new ArrayList<>();
    private final Map<Exposure, BitSet> exposed = new TreeMap<>();

    private void add(int passing, int failing, Exposure... met) {
        for (int i = 0; i < passing + failing; i++) {
            for (Exposure exposure : met) {
                exposed.computeIfAbsent(exposure, key -> new BitSet()).set(reels.size());
            }
            reels.add(new TestedReel("R-" + reels.size(), i >= passing, i >= passing ? -1.0 - i : 1.0 + i));
        }
    }

    private SuspectRanking rank() {
        return SuspectRanking.of(Population.of(reels, exposed), SuspectQuestion.of(Evidence.FAILURES), 10);
    }

    private static String sentence(SuspectRanking ranking) {
        return Wording.english()
                .testCause(ranking.testCause(), ranking.question().evidence());
    }

    /** 25 of 50 fail in one bay, none of 50 in the other; most of a compound lot happens to have been tested in the first. */
    @Test
    void aBayThatFailsHalfOfItsReelsIsNamedBeforeTheLotThatOverlapsIt() {
        add(15, 15, BAY, LOT);
        add(10, 10, BAY);
        add(10, 0, OTHER_BAY, LOT);
        add(40, 0, OTHER_BAY);
        SuspectRanking ranking = rank();
        Suspect first = ranking.suspects().get(0);
        assertEquals(BAY, first.first());
        assertEquals(Suspect.Side.TEST, first.side());
        assertEquals(new CountTable(50, 25, 50, 0), first.counts());
        Suspect lot = suspect(ranking, LOT);
        assertTrue(lot.q() <= 0.05, "the lot looks guilty by itself");
        assertEquals(Suspect.Side.UPSTREAM, lot.side());
        assertEquals(List.of(BAY), lot.explainedBy());
        assertEquals(first, ranking.testCause().suspect());
        assertEquals(List.of(LOT), ranking.testCause().explains());
        assertEquals(
                "The test itself is the likelier cause: of 50 reels tested at bay bay-1 25 fail, of 50 others 0. It explains lot PE-1."
                        + " Test some of these reels again, and otherwise, before a lot or a machine is held for it.",
                sentence(ranking));
    }

    private static Suspect suspect(SuspectRanking ranking, Exposure first) {
        return ranking.suspects().stream()
                .filter(suspect -> suspect.first().equals(first))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aLotThatWasTestedInOneBayAloneIsNotToldFromIt() {
        add(25, 25, BAY, LOT, MACHINE);
        add(50, 0, OTHER_BAY);
        SuspectRanking ranking = rank();
        Suspect first = ranking.suspects().get(0);
        assertEquals(List.of(BAY, LOT, MACHINE), first.group());
        assertEquals(Suspect.Side.BOTH, first.side());
        assertEquals(List.of(LOT, MACHINE), ranking.testCause().cannotBeToldFrom());
        assertEquals(
                "The test itself may be the cause: of 50 reels tested at bay bay-1 25 fail, of 50 others 0. These reels do not tell it"
                        + " from lot PE-1, machine INS-1. Test some of them again, and otherwise, before a lot or a machine is held"
                        + " for it.",
                sentence(ranking));
    }

    @Test
    void aLotThatFailsInBothBaysIsNotTheTest() {
        add(10, 20, BAY, LOT);
        add(20, 1, BAY);
        add(5, 10, OTHER_BAY, LOT);
        add(60, 0, OTHER_BAY);
        SuspectRanking ranking = rank();
        assertEquals(LOT, ranking.suspects().get(0).first());
        assertTrue(suspect(ranking, BAY).q() <= 0.05, "the bay looks guilty by itself");
        assertEquals(List.of(LOT), suspect(ranking, BAY).explainedBy());
        assertNull(ranking.testCause());
    }

    /** Both are causes: the lot is the stronger, and neither explains the other. */
    @Test
    void aBayThatFailsBesideAStrongerLotIsListedAndNotPutFirst() {
        add(1, 19, BAY, LOT);
        add(20, 10, BAY);
        add(2, 18, OTHER_BAY, LOT);
        add(60, 0, OTHER_BAY);
        SuspectRanking ranking = rank();
        assertEquals(LOT, ranking.suspects().get(0).first());
        assertTrue(suspect(ranking, BAY).q() <= 0.05);
        assertEquals(List.of(), suspect(ranking, BAY).explainedBy());
        assertNull(ranking.testCause());
    }

    @Test
    void marginsSayItToo() {
        for (int i = 0; i < 40; i++) {
            boolean low = i % 2 == 0;
            exposed.computeIfAbsent(low ? BAY : OTHER_BAY, key -> new BitSet()).set(i);
            reels.add(new TestedReel("R-" + i, false, (low ? 1 : 3) + i / 100.0));
        }
        SuspectRanking ranking =
                SuspectRanking.of(Population.of(reels, exposed), SuspectQuestion.of(Evidence.MARGINS), 10);
        assertTrue(
                sentence(ranking)
                        .startsWith(
                                "The test itself is the likelier cause: a reel tested at bay bay-1 has a lower margin than"
                                        + " another in 100 % of all pairs of them."),
                sentence(ranking));
    }

    @Test
    void everyFactorOfTheTestHasItsWords() {
        for (Factor factor : Factor.values()) {
            if (factor.isOfTest()) {
                reels.clear();
                exposed.clear();
                add(5, 15, new Exposure(factor, "X-1"));
                add(30, 0);
                String found = sentence(rank());
                assertTrue(found.contains(" X-1 15 fail"), found);
            }
        }
    }

    /** A hundred plants of a hundred reels: exactly 25 of the 50 in one bay fail, whatever else they met. */
    @Test
    void theBayComesFirstAndWhatOverlapsItIsSaidToBeExplained() {
        List<String> missed = new ArrayList<>();
        List<String> unexplained = new ArrayList<>();
        for (long seed = 1; seed <= 100; seed++) {
            Random random = new Random(seed);
            List<Integer> order = new ArrayList<>();
            for (int reel = 0; reel < 100; reel++) {
                order.add(reel);
            }
            Collections.shuffle(order, random);
            Map<Exposure, BitSet> met = SimulatedPlant.exposed(SimulatedPlant.reels(seed, 100));
            List<TestedReel> tested = new ArrayList<>();
            for (int reel = 0; reel < 100; reel++) {
                int place = order.indexOf(reel);
                met.computeIfAbsent(place < 50 ? BAY : OTHER_BAY, key -> new BitSet())
                        .set(reel);
                tested.add(new TestedReel("R-" + reel, place < 25, null));
            }
            SuspectRanking ranking =
                    SuspectRanking.of(Population.of(tested, met), SuspectQuestion.of(Evidence.FAILURES), 1_000);
            if (!ranking.suspects().get(0).group().contains(BAY)
                    || ranking.testCause() == null
                    || !ranking.testCause().suspect().group().contains(BAY)) {
                missed.add("seed " + seed + ": " + ranking.suspects().get(0).group());
            }
            ranking.suspects().stream()
                    .filter(suspect -> suspect.side() == Suspect.Side.UPSTREAM && suspect.q() <= 0.05)
                    .filter(suspect -> !suspect.explainedBy().contains(BAY)
                            && !suspect.cannotBeToldFrom().contains(BAY))
                    .forEach(suspect -> unexplained.add(suspect.group() + ", q " + suspect.q() + ", place "
                            + ranking.suspects().indexOf(suspect) + suspect.counts()
                            + ranking.suspects().get(0).group() + suspect.explainedBy()));
        }
        assertEquals(List.of(), missed);
        assertEquals(List.of(), unexplained);
    }

    /** As in {@link PlantedCauseTest}, with the factors of the test in the family. */
    @ParameterizedTest
    @EnumSource(Evidence.class)
    void withTheTestInTheFamilyFalseAlarmsAreAtMostAsStated(Evidence evidence) {
        int alarms = 0;
        for (long seed = 1; seed <= 200; seed++) {
            SimulatedTests tests = new SimulatedTests(seed, 1_500, 25);
            Map<Exposure, BitSet> met = SimulatedPlant.exposed(tests.with(SimulatedPlant.reels(seed, 1_500)));
            Random random = new Random(~seed);
            List<TestedReel> tested = new ArrayList<>();
            for (int reel = 0; reel < 1_500; reel++) {
                tested.add(new TestedReel("R-" + reel, random.nextDouble() < 0.03, random.nextGaussian()));
            }
            SuspectRanking ranking = SuspectRanking.of(
                    Population.of(tested, met).withWeeks(tests.weeks()), SuspectQuestion.of(evidence), 1);
            boolean isNamed = ranking.suspects().get(0).q() <= 0.05;
            alarms += isNamed ? 1 : 0;
            assertFalse(ranking.testCause() != null && !isNamed, "who names the test names something");
        }
        System.getLogger(TestCauseTest.class.getName())
                .log(System.Logger.Level.INFO, evidence + ": " + alarms + " false alarms of 200");
        int allowed = BinomialDistribution.of(200, 0.05).inverseSurvivalProbability(0.001);
        assertTrue(alarms <= allowed, alarms + " false alarms, " + allowed + " allowed");
    }

    /** What all reels of a week met cannot be told from that week. */
    @Test
    void whatAWholeWeekMetIsNotTestedWithinWeeks() {
        add(25, 25, BAY);
        add(50, 0, OTHER_BAY);
        List<LocalDate> weeks = new ArrayList<>(Collections.nCopies(50, LocalDate.of(2026, 3, 2)));
        weeks.addAll(Collections.nCopies(50, LocalDate.of(2026, 3, 9)));
        Population population = Population.of(reels, exposed).withWeeks(weeks);
        SuspectQuestion question = SuspectQuestion.of(Evidence.FAILURES);
        SuspectRanking ranking = SuspectRanking.of(population, question, 10);
        Suspect first = ranking.suspects().get(0);
        assertEquals(BAY, first.first(), "among all reels it is the best evidence");
        assertFalse(first.tested());
        assertTrue(first.p() < 1e-6, () -> "p " + first.p());
        assertEquals(1, first.pWithinStrata(), 0);
        assertEquals(1, first.q(), 0);
        assertNull(ranking.testCause());
        assertNotNull(SuspectRanking.of(population, question.withStrata(StrataBy.NONE), 10)
                .testCause());
        assertEquals(2, ranking.strata());
    }

    @Test
    void anOccasionKnowsTheInstrumentsOfThePropertyItsDayAndItsWeek() {
        TestOccasion occasion = TestOccasion.of(
                "bay-1",
                " ",
                List.of(
                        new Equipment("na-1", null, Set.of(Property.NEXT)),
                        new Equipment("rb-1", null, Set.of(Property.CONDUCTOR_RESISTANCE)),
                        new Equipment("all-1", null, Set.of())),
                Property.PS_NEXT,
                OffsetDateTime.parse("2026-03-01T22:30:00-05:00"));
        assertEquals(
                Set.of(
                        BAY,
                        new Exposure(Factor.INSTRUMENT, "na-1"),
                        new Exposure(Factor.INSTRUMENT, "all-1"),
                        new Exposure(Factor.TEST_DAY, "2026-03-02")),
                occasion.exposures());
        assertEquals(LocalDate.of(2026, 3, 2), occasion.week());
    }
}
