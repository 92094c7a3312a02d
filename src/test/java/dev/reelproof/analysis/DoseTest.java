package dev.reelproof.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotKind;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** What share of a reel was made from a lot, and whether failing grows with it. */
class DoseTest {
    private static final double DOUBLES = 1e-12;

    private final List<UpstreamLot> lots = new ArrayList<>();
    private final List<Upstream.Link> links = new ArrayList<>();

    private void lot(String id, LotKind kind, double quantity, String unit) {
        lots.add(new UpstreamLot(id, kind, new Amount(quantity, unit), null, null, null, null, null, null, Map.of()));
    }

    private void took(String child, String parent, double amount) {
        links.add(new Upstream.Link(child, parent, amount));
    }

    private double share(String reel, String lot) {
        Doses doses = new UpstreamTrace(List.of(reel), new Upstream(lots, links))
                .doses(new int[] {0})
                .get(lot);
        return doses == null ? 0 : doses.of(0);
    }

    /**
     * A reel of 305 m: pair 1 from the lots A and B, pair 2 from C. Of the compound, A took 30 kg of PE-1 and 10 kg of PE-2, B and C all of
     * PE-2. Half of A went into the pair.
     */
    private void reelOfTwoPairs() {
        lot("R-1", LotKind.REEL, 305, "m");
        lot("TP-1", LotKind.TWISTED_PAIR, 1_000, "m");
        lot("TP-2", LotKind.TWISTED_PAIR, 2_000, "m");
        lot("A", LotKind.INSULATED_CONDUCTOR, 2_000, "m");
        lot("B", LotKind.INSULATED_CONDUCTOR, 1_000, "m");
        lot("C", LotKind.INSULATED_CONDUCTOR, 4_000, "m");
        lot("PE-1", LotKind.INSULATION_COMPOUND, 30, "kg");
        lot("PE-2", LotKind.INSULATION_COMPOUND, 70, "kg");
        took("R-1", "TP-1", 305);
        took("R-1", "TP-2", 305);
        took("TP-1", "A", 1_000);
        took("TP-1", "B", 1_000);
        took("TP-2", "C", 4_000);
        took("A", "PE-1", 30);
        took("A", "PE-2", 10);
        took("B", "PE-2", 20);
        took("C", "PE-2", 40);
    }

    @Test
    void aShareIsWhatTheBalanceOfEachKindSays() {
        reelOfTwoPairs();
        assertEquals(0.5, share("R-1", "TP-1"), DOUBLES);
        // Of conductor 305 m of A, 305 m of B, 610 m of C.
        assertEquals(0.25, share("R-1", "A"), DOUBLES);
        assertEquals(0.5, share("R-1", "C"), DOUBLES);
        // Of compound, for each metre of the reel: 30/2000 kg of PE-1; 10/2000 + 20/1000 + 2 · 40/4000 kg of PE-2.
        assertEquals(0.015 / (0.015 + 0.045), share("R-1", "PE-1"), DOUBLES);
        assertEquals(0.045 / (0.015 + 0.045), share("R-1", "PE-2"), DOUBLES);
    }

    /** Cable that was spliced of two lots, of which one was cut from a third. */
    @Test
    void throughALotOfTheSameKindSharesMultiply() {
        lot("R-1", LotKind.REEL, 300, "m");
        lot("J-1", LotKind.JACKETED_CABLE, 300, "m");
        lot("J-2", LotKind.JACKETED_CABLE, 900, "m");
        lot("J-3", LotKind.JACKETED_CABLE, 5_000, "m");
        lot("PVC", LotKind.JACKET_COMPOUND, 50, "kg");
        took("R-1", "J-1", 100);
        took("R-1", "J-2", 200);
        took("J-2", "J-3", 900);
        took("J-3", "PVC", 50);
        assertEquals(2.0 / 3, share("R-1", "J-2"), DOUBLES);
        assertEquals(2.0 / 3, share("R-1", "J-3"), DOUBLES);
        assertEquals(1, share("R-1", "PVC"), DOUBLES);
    }

    @Test
    void whatIsMeasuredByLengthHereAndByMassThereHasNoKnownShare() {
        lot("R-1", LotKind.REEL, 300, "m");
        lot("AC-1", LotKind.ANNEALED_CONDUCTOR, 300, "m");
        lot("AC-2", LotKind.ANNEALED_CONDUCTOR, 20, "kg");
        lot("T-1", LotKind.TAPE, 600, "m");
        took("R-1", "AC-1", 300);
        took("R-1", "AC-2", 10);
        took("R-1", "T-1", 300);
        assertEquals(Double.NaN, share("R-1", "AC-1"));
        assertEquals(1, share("R-1", "T-1"), DOUBLES);
    }

    @Test
    void aCircleIsRefused() {
        took("A", "B", 1);
        took("B", "A", 1);
        assertThrows(
                IllegalArgumentException.class, () -> new UpstreamTrace(List.of("R-1"), new Upstream(lots, links)));
        assertThrows(IllegalArgumentException.class, () -> new Upstream.Link("A", "B", Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new Upstream.Link("A", "B", 0));
    }

    /** Whatever was taken, the shares of the lots of a kind that nothing of their kind lies above make the whole reel. */
    @Property(tries = 200)
    void theSharesOfAKindAddUpToTheWhole(
            @ForAll @IntRange(min = 1, max = 4) int conductors,
            @ForAll @IntRange(min = 1, max = 5) int compounds,
            @ForAll long seed) {
        DoseTest plant = new DoseTest();
        Random random = new Random(seed);
        plant.lot("R-1", LotKind.REEL, 1 + random.nextInt(1_000), "m");
        for (int conductor = 0; conductor < conductors; conductor++) {
            plant.lot("IC-" + conductor, LotKind.INSULATED_CONDUCTOR, 1 + random.nextInt(1_000), "km");
            plant.took("R-1", "IC-" + conductor, 1 + random.nextInt(1_000));
            plant.took("IC-" + conductor, "PE-" + random.nextInt(compounds), 1 + random.nextInt(50));
            plant.took("IC-" + conductor, "PE-" + compounds, 1 + random.nextInt(50));
        }
        for (int compound = 0; compound <= compounds; compound++) {
            plant.lot("PE-" + compound, LotKind.INSULATION_COMPOUND, 1_000, "kg");
        }
        for (String kind : List.of("IC-", "PE-")) {
            double sum = IntStream.rangeClosed(0, 5)
                    .mapToDouble(number -> plant.share("R-1", kind + number))
                    .sum();
            assertEquals(1, sum, 1e-9);
        }
    }

    // ---- evidence

    private static ReelFinding finding(String reel, boolean failing) {
        return new ReelFinding(
                reel,
                "P",
                failing,
                true,
                null,
                Set.of(),
                new TestOccasion(null, null, Set.of(), OffsetDateTime.parse("2026-03-02T09:00:00Z")));
    }

    /** Reels of which 100 % or 25 % are of the bad lot, and others; without a change of what they met. */
    private SuspectRanking reels(int failingOfWhole, int failingOfQuarter) {
        List<ReelFinding> findings = new ArrayList<>();
        lot("GOOD", LotKind.INSULATED_CONDUCTOR, 100, "km");
        lot("BAD", LotKind.INSULATED_CONDUCTOR, 100, "km");
        for (int reel = 0; reel < 40; reel++) {
            String id = "R-" + reel;
            lot(id, LotKind.REEL, 300, "m");
            boolean whole = reel < 10;
            boolean quarter = !whole && reel < 20;
            if (whole || quarter) {
                took(id, "BAD", whole ? 2_400 : 600);
            }
            if (!whole) {
                took(id, "GOOD", quarter ? 1_800 : 2_400);
            }
            findings.add(finding(id, whole ? reel < failingOfWhole : quarter && reel - 10 < failingOfQuarter));
        }
        return SuspectRanking.of(
                TracedPopulation.of(findings, new Upstream(lots, links), 0), SuspectQuestion.of(Evidence.FAILURES), 10);
    }

    @Test
    void failingThatGrowsWithTheShareIsSaid() {
        Suspect bad = reels(8, 2).suspects().get(0);
        assertEquals(new Exposure(Factor.LOT, "BAD"), bad.first());
        DoseEvidence dose = bad.dose();
        assertEquals(bad.first(), dose.lot());
        assertEquals(20, dose.known());
        assertEquals(0, dose.unknown());
        assertEquals(List.of(new DoseEvidence.Band(0, 25, 10, 2), new DoseEvidence.Band(75, 100, 10, 8)), dose.bands());
        // Two shares are an exposure: 8 or more of the 10 among 10 failing of 20; [C(10,8)² + C(10,9)² + 1] / C(20,10).
        assertEquals((45.0 * 45 + 10 * 10 + 1) / 184_756, dose.p(), DOUBLES);
    }

    @Test
    void theDoseDecidesNothing() {
        Suspect grows = reels(8, 2).suspects().get(0);
        Suspect even = new DoseTest().reels(5, 5).suspects().get(0);
        assertEquals(grows.counts(), even.counts());
        assertEquals(grows.p(), even.p(), 0);
        assertEquals(grows.q(), even.q(), 0);
        assertTrue(even.dose().p() > 0.5);
    }

    @Test
    void reelsOfUnknownShareStayExposed() {
        lot("X-KG", LotKind.INSULATED_CONDUCTOR, 50, "kg");
        took("R-0", "X-KG", 3);
        Suspect bad = reels(8, 2).suspects().stream()
                .filter(suspect -> suspect.first().value().equals("BAD"))
                .findFirst()
                .orElseThrow();
        assertEquals(20, bad.counts().exposed());
        assertEquals(19, bad.dose().known());
        assertEquals(1, bad.dose().unknown());
    }

    @Test
    void whereAllSharesAreEqualOrNoneIsKnownThereIsNoDose() {
        List<TestedReel> tested = new ArrayList<>();
        BitSet met = new BitSet();
        for (int i = 0; i < 20; i++) {
            tested.add(new TestedReel("R-" + i, i < 5, null));
            met.set(i, i < 8);
        }
        Exposure lot = new Exposure(Factor.LOT, "L");
        Population population = Population.of(tested, Map.of(lot, met));
        SuspectQuestion question = SuspectQuestion.of(Evidence.FAILURES);
        assertNull(SuspectRanking.of(population, question, 1).suspects().get(0).dose());
        double[] shares = new double[8];
        Arrays.fill(shares, 0.5);
        int[] places = {0, 1, 2, 3, 4, 5, 6, 7};
        assertNull(SuspectRanking.of(population.withDoses(Map.of(lot, new Doses(places, shares))), question, 1)
                .suspects()
                .get(0)
                .dose());
        shares[7] = 0.6;
        assertNotNull(SuspectRanking.of(population.withDoses(Map.of(lot, new Doses(places, shares))), question, 1)
                .suspects()
                .get(0)
                .dose());
    }
}
