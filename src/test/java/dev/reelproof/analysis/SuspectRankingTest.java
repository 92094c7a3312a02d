package dev.reelproof.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SuspectRankingTest {
    private static final Exposure LOT = new Exposure(Factor.LOT, "PE-1");
    private static final Exposure OTHER_LOT = new Exposure(Factor.LOT, "PE-2");
    private static final Exposure MACHINE = new Exposure(Factor.MACHINE, "INS-1");

    private final List<TestedReel> reels = new ArrayList<>();
    private final Map<Exposure, BitSet> exposed = new TreeMap<>();

    /** Adds reels that met the same. */
    private void add(int passing, int failing, Exposure... met) {
        for (int i = 0; i < passing + failing; i++) {
            int place = reels.size();
            for (Exposure exposure : met) {
                exposed.computeIfAbsent(exposure, key -> new BitSet()).set(place);
            }
            boolean isFailing = i >= passing;
            reels.add(new TestedReel("R-" + place, isFailing, (isFailing ? -1.0 : 1.0) + place / 1000.0));
        }
    }

    private SuspectRanking rank(Evidence evidence) {
        return SuspectRanking.of(Population.of(reels, exposed), SuspectQuestion.of(evidence), 10);
    }

    private SuspectRanking rank() {
        return rank(Evidence.FAILURES);
    }

    @Test
    void countsReelsInAndOut() {
        add(3, 9, LOT);
        add(41, 3, OTHER_LOT);
        add(41, 3);
        SuspectRanking ranking = rank();
        assertEquals(100, ranking.reels());
        assertEquals(15, ranking.failing());
        Suspect first = ranking.suspects().get(0);
        assertEquals(LOT, first.first());
        assertEquals(new CountTable(12, 9, 88, 6), first.counts());
        assertEquals(41, first.counts().oddsRatio().orElseThrow(), 1e-12);
        // 9/12 − 6/88
        assertEquals(0.75 - 6.0 / 88, first.riskDifference().estimate(), 1e-12);
        assertTrue(
                first.riskDifference().lower() > 0.3 && first.riskDifference().upper() < 0.9);
        assertNull(first.margins());
        assertEquals(2, ranking.tested());
        assertEquals(first.p() * 2, first.q(), 1e-18);
        // Those with fewer failures are no suspects, and are told so.
        assertTrue(ranking.suspects().get(1).p() > 0.9);
    }

    @Test
    void aMachineThatSawOneLotAloneIsInseparableFromItAndPaysOnce() {
        add(3, 9, LOT, MACHINE);
        add(41, 3, OTHER_LOT);
        add(41, 3);
        SuspectRanking ranking = rank();
        assertEquals(List.of(LOT, MACHINE), ranking.suspects().get(0).group());
        assertEquals(3, ranking.exposures());
        assertEquals(2, ranking.suspectGroups());
        assertEquals(2, ranking.tested());
        assertEquals(2, ranking.suspects().size());
    }

    @Test
    void whatNestsAndCannotBeToldApartIsSaid() {
        add(1, 9, LOT, MACHINE);
        add(1, 0, MACHINE); // one more reel of the machine, which tells nothing
        add(88, 2);
        SuspectRanking ranking = rank();
        Suspect first = ranking.suspects().get(0);
        assertEquals(List.of(LOT), first.group());
        assertEquals(List.of(MACHINE), first.cannotBeToldFrom());
        assertEquals(List.of(LOT), ranking.suspects().get(1).cannotBeToldFrom());
        assertEquals(List.of(), first.explainedBy());
    }

    @Test
    void whatNestsAndCanBeToldApartIsExplained() {
        add(1, 9, LOT, MACHINE);
        add(30, 0, MACHINE); // the machine without the lot is well
        add(88, 2);
        SuspectRanking ranking = rank();
        assertEquals(List.of(LOT), ranking.suspects().get(0).group());
        assertEquals(List.of(), ranking.suspects().get(0).cannotBeToldFrom());
        Suspect second = ranking.suspects().get(1);
        assertEquals(List.of(MACHINE), second.group());
        assertEquals(List.of(LOT), second.explainedBy());
        assertEquals(List.of(), second.cannotBeToldFrom());
    }

    @Test
    void aPartIsExplainedByTheWholeThatFailsEverywhere() {
        add(2, 4, LOT, MACHINE);
        add(8, 16, MACHINE); // the machine fails as much without the lot
        add(88, 2);
        SuspectRanking ranking = rank();
        assertEquals(List.of(MACHINE), ranking.suspects().get(0).group());
        assertEquals(List.of(MACHINE), ranking.suspects().get(1).explainedBy());
    }

    @Test
    void twoCausesStandBesideEachOther() {
        add(2, 18, LOT);
        add(2, 18, OTHER_LOT);
        add(2, 18, LOT, OTHER_LOT);
        add(140, 3);
        for (Suspect suspect : rank().suspects()) {
            assertTrue(suspect.q() < 0.05);
            assertEquals(List.of(), suspect.cannotBeToldFrom());
            assertEquals(List.of(), suspect.explainedBy());
        }
    }

    @Test
    void leavesOutWhatEveryReelOrTooFewMet() {
        Exposure everywhere = new Exposure(Factor.STEP, "jacketing");
        Exposure rare = new Exposure(Factor.LOT, "PE-9");
        add(0, 2, everywhere, rare);
        add(3, 9, everywhere, LOT);
        add(80, 4, everywhere);
        SuspectRanking ranking = rank();
        assertEquals(1, ranking.metByEveryReel());
        assertEquals(1, ranking.metByTooFew());
        assertEquals(1, ranking.suspectGroups());
        assertEquals(List.of(LOT), ranking.suspects().get(0).group());
        assertEquals(
                2,
                SuspectRanking.of(Population.of(reels, exposed), new SuspectQuestion(Evidence.FAILURES, 0.05, 2), 10)
                        .suspectGroups());
    }

    @Test
    void doesNotTestWhatCouldNotBeSignificant() {
        add(0, 1, LOT); // one failing reel of all: even were it in the smaller group, p = 3/20
        add(2, 0, LOT);
        add(17, 0, OTHER_LOT);
        SuspectRanking ranking = rank();
        assertEquals(2, ranking.suspectGroups());
        assertEquals(0, ranking.tested());
        assertEquals(3.0 / 20, ranking.suspects().get(0).p(), 1e-12);
        assertEquals(1, ranking.suspects().get(0).q(), 0);
        assertFalse(ranking.suspects().get(0).tested());
    }

    @Test
    void whatFailsMoreComesFirstThoughItIsTooLittleToTest() {
        add(3, 0, LOT); // could have held both failing reels, p = 3/105, but holds none
        add(2, 2, OTHER_LOT); // holds both, p = 6/105: not to be called significant, yet the better evidence
        add(8, 0);
        List<Suspect> suspects = rank().suspects();
        assertEquals(OTHER_LOT, suspects.get(0).first());
        assertFalse(suspects.get(0).tested());
        assertEquals(6.0 / 105, suspects.get(0).p(), 1e-12);
        assertEquals(LOT, suspects.get(1).first());
        assertTrue(suspects.get(1).tested());
    }

    @Test
    void findsADriftOfMarginsThoughNothingFails() {
        for (int i = 0; i < 40; i++) {
            boolean isLow = i % 4 == 0;
            reels.add(new TestedReel("R-" + i, false, 2 + i / 100.0 - (isLow ? 1 : 0)));
            exposed.computeIfAbsent(isLow ? LOT : OTHER_LOT, key -> new BitSet())
                    .set(i);
            exposed.computeIfAbsent(MACHINE, key -> new BitSet()).set(i, i % 2 == 0);
        }
        assertEquals(0, rank().tested(), "without a failing reel, counts say nothing");
        SuspectRanking ranking = rank(Evidence.MARGINS);
        Suspect first = ranking.suspects().get(0);
        assertEquals(List.of(LOT), first.group());
        assertTrue(first.q() < 1e-6, () -> "q " + first.q());
        assertEquals(1, first.margins().shareLower(), 1e-12);
        assertEquals(-1, first.margins().shift().estimate(), 0.1);
        assertTrue(first.margins().shift().upper() < 0);
        Suspect machine = ranking.suspects().get(1);
        assertEquals(List.of(MACHINE), machine.group());
        assertEquals(List.of(LOT), machine.explainedBy());
    }

    @Test
    void asksForMarginsWhereTheyAreTheEvidence() {
        add(3, 3, LOT);
        add(3, 0);
        reels.add(new TestedReel("R-bare", true, null));
        assertEquals(10, rank().reels());
        String message = assertThrows(IllegalArgumentException.class, () -> rank(Evidence.MARGINS))
                .getMessage();
        assertTrue(message.contains("reel R-bare has no margin"), message);
    }

    @Test
    void standsEmptyWithoutReelsOrFailures() {
        assertEquals(List.of(), rank().suspects());
        add(10, 0, LOT);
        add(10, 0, OTHER_LOT);
        assertEquals(0, rank().tested());
        assertEquals(1, rank().suspects().get(0).p(), 0);
        assertEquals(
                List.of(),
                SuspectRanking.of(Population.of(reels, exposed), SuspectQuestion.of(Evidence.FAILURES), 0)
                        .suspects());
    }

    @Test
    void refusesWhatCannotBe() {
        add(1, 1, LOT);
        TestedReel first = reels.get(0);
        assertThrows(IllegalArgumentException.class, () -> Population.of(List.of(first, first), Map.of()));
        assertThrows(IllegalArgumentException.class, () -> Population.of(List.of(first), exposed));
        assertThrows(IllegalArgumentException.class, () -> new SuspectQuestion(Evidence.FAILURES, Double.NaN, 3));
        assertThrows(IllegalArgumentException.class, () -> new SuspectQuestion(Evidence.FAILURES, 0, 3));
        assertThrows(IllegalArgumentException.class, () -> new SuspectQuestion(Evidence.FAILURES, 0.6, 3));
        assertThrows(IllegalArgumentException.class, () -> new SuspectQuestion(Evidence.FAILURES, 0.05, 0));
        assertThrows(IllegalArgumentException.class, () -> new TestedReel("R", true, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new Exposure(Factor.LOT, " "));
        assertThrows(IllegalArgumentException.class, () -> new CountTable(3, 4, 1, 0));
    }

    /**
     * Plants in which some suspects cannot be significant whatever was found: their p lie among those of the tested, and must neither
     * lower a q nor get one.
     */
    @ParameterizedTest
    @EnumSource(Evidence.class)
    void onlyWhatWasTestedIsCorrectedForByBenjaminiAndHochberg(Evidence evidence) {
        int mixed = 0;
        for (long seed = 1; seed <= 50; seed++) {
            SuspectRanking ranking = randomPlant(evidence, new Random(seed));
            List<Suspect> suspects = ranking.suspects();
            List<Double> tested =
                    suspects.stream().filter(Suspect::tested).map(Suspect::p).toList();
            assertEquals(tested.size(), ranking.tested());
            for (Suspect suspect : suspects) {
                double q = suspect.tested() ? benjaminiHochberg(tested, suspect.p()) : 1;
                assertEquals(q, suspect.q(), 1e-12, suspect::toString);
            }
            double worst = tested.stream().mapToDouble(p -> p).max().orElse(0);
            mixed += suspects.stream().anyMatch(suspect -> !suspect.tested() && suspect.p() < worst) ? 1 : 0;
        }
        assertTrue(mixed >= 25, mixed + " of 50 plants mix both kinds");
    }

    /** Few reels fail, and exposures range from the fewest that count to half of all reels. */
    private static SuspectRanking randomPlant(Evidence evidence, Random random) {
        int count = evidence == Evidence.FAILURES ? 40 : 12;
        List<TestedReel> tested = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            tested.add(new TestedReel("R-" + i, random.nextInt(10) == 0, random.nextGaussian()));
        }
        Map<Exposure, BitSet> met = new TreeMap<>();
        for (int i = 0; i < 30; i++) {
            BitSet reelsMet = new BitSet();
            int size = 1 + random.nextInt(count / 2);
            while (reelsMet.cardinality() < size) {
                reelsMet.set(random.nextInt(count));
            }
            met.put(new Exposure(Factor.LOT, "L-" + i), reelsMet);
        }
        return SuspectRanking.of(Population.of(tested, met), new SuspectQuestion(evidence, 0.05, 1), 1_000);
    }

    /** As the definition says: the least rate m t / R(t) of all thresholds t from p on, R(t) how many lie at or below t. */
    private static double benjaminiHochberg(List<Double> all, double p) {
        return all.stream()
                .filter(threshold -> threshold >= p)
                .mapToDouble(threshold -> all.size()
                        * threshold
                        / all.stream().filter(other -> other <= threshold).count())
                .min()
                .orElse(1);
    }
}
