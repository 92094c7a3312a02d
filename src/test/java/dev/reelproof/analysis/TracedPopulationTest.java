package dev.reelproof.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.analysis.IncomparableMarginsException.Differ;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Setting;
import dev.reelproof.measurement.Property;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TracedPopulationTest {
    private static final OffsetDateTime NINE = OffsetDateTime.parse("2026-03-02T09:00:00Z");

    private static final TestOccasion OCCASION = new TestOccasion(null, null, Set.of(), NINE);
    private static final Exposure DAY = new Exposure(Factor.TEST_DAY, "2026-03-02");
    private static final Amount QUANTITY = new Amount(100, "km");

    private final Map<UpstreamLot, BitSet> upstream = new HashMap<>();

    private static ReelFinding finding(String reel, String product, String unit) {
        return new ReelFinding(reel, product, false, true, 1.5, Set.of(unit), OCCASION);
    }

    private static UpstreamLot lot(String id, LotKind kind) {
        return new UpstreamLot(id, kind, QUANTITY, null, null, null, null, null, null, Map.of());
    }

    private void met(UpstreamLot lot, int... places) {
        BitSet set = new BitSet();
        for (int place : places) {
            set.set(place);
        }
        upstream.put(lot, set);
    }

    private TracedPopulation traced(ReelFinding... findings) {
        List<Upstream.Link> links = new ArrayList<>();
        upstream.forEach((lot, places) -> places.stream()
                .filter(place -> !findings[place].reel().equals(lot.id()))
                .forEach(place -> links.add(new Upstream.Link(findings[place].reel(), lot.id(), 1))));
        return TracedPopulation.of(List.of(findings), new Upstream(List.copyOf(upstream.keySet()), links), 2);
    }

    private static Exposure exposure(Factor factor, String value) {
        return new Exposure(factor, value);
    }

    private static BitSet places(int... places) {
        BitSet set = new BitSet();
        for (int place : places) {
            set.set(place);
        }
        return set;
    }

    @Test
    void leavesOutAReelOfWhichOnlyItselfIsKnown() {
        met(lot("R-1", LotKind.REEL), 0);
        met(lot("R-2", LotKind.REEL), 1);
        met(lot("AC-1", LotKind.ANNEALED_CONDUCTOR), 1);
        TracedPopulation traced =
                traced(finding("R-1", "P", "dB"), finding("R-2", "P", "dB"), finding("R-3", "P", "dB"));
        assertEquals(
                List.of(new TestedReel("R-2", false, 1.5)), traced.population().reels());
        assertEquals(2, traced.untraced());
        assertEquals(2, traced.notTested());
        assertEquals(
                Map.of(
                        DAY,
                        places(0),
                        exposure(Factor.LOT, "AC-1"),
                        places(0),
                        exposure(Factor.PRODUCT, "P"),
                        places(0)),
                traced.population().exposed());
    }

    /** What made the reel itself is an exposure; the reel is none. */
    @Test
    void aReelMetTheMachineThatCutItAndNotItself() {
        met(
                new UpstreamLot(
                        "R-1", LotKind.REEL, QUANTITY, "cutting", "CUT-1", "R-1", "A", "OP-1", "night", Map.of()),
                0);
        met(
                new UpstreamLot(
                        "IC-1",
                        LotKind.INSULATION_COMPOUND,
                        QUANTITY,
                        null,
                        null,
                        "RUN-1",
                        null,
                        " ",
                        null,
                        Map.of(
                                "Die set", Setting.ofText("D-7"),
                                "die-size", Setting.ofNumber(0.9, "mm"),
                                "screw", Setting.ofText("S1"),
                                "note", Setting.ofText(" "))),
                0,
                1);
        TracedPopulation traced = traced(finding("R-1", "P", "dB"), finding("R-2", "Q", "dB"));
        assertEquals(
                Map.ofEntries(
                        Map.entry(DAY, places(0, 1)),
                        Map.entry(exposure(Factor.STEP, "cutting"), places(0)),
                        Map.entry(exposure(Factor.MACHINE, "CUT-1"), places(0)),
                        Map.entry(exposure(Factor.LINE, "A"), places(0)),
                        Map.entry(exposure(Factor.OPERATOR, "OP-1"), places(0)),
                        Map.entry(exposure(Factor.SHIFT, "night"), places(0)),
                        Map.entry(exposure(Factor.PRODUCT, "P"), places(0)),
                        Map.entry(exposure(Factor.PRODUCT, "Q"), places(1)),
                        Map.entry(exposure(Factor.LOT, "IC-1"), places(0, 1)),
                        Map.entry(exposure(Factor.STEP_RUN, "RUN-1"), places(0, 1)),
                        Map.entry(exposure(Factor.MATERIAL, "insulation-compound"), places(0, 1)),
                        Map.entry(exposure(Factor.DIE, "D-7"), places(0, 1)),
                        Map.entry(exposure(Factor.SETTING, "screw: S1"), places(0, 1))),
                traced.population().exposed());
    }

    @ParameterizedTest
    @CsvSource({
        "true, true, 1, true, true",
        "true, false, 1, true, true",
        "true, false, , true, false",
        "false, true, 1, true, true",
        "false, true, , true, false",
        "false, false, 1, false, false",
    })
    void aReelCountsWhenItFailsOrEverythingWasTested(
            boolean failing, boolean tested, Double margin, boolean forFailures, boolean forMargins) {
        ReelFinding finding = new ReelFinding("R-1", "P", failing, tested, margin, Set.of(), OCCASION);
        assertEquals(forFailures, finding.countsFor(Evidence.FAILURES));
        assertEquals(forMargins, finding.countsFor(Evidence.MARGINS));
    }

    @Test
    void marginsOfDifferentProductsAreNotRankedTogether() {
        met(lot("AC-1", LotKind.ANNEALED_CONDUCTOR), 0, 1);
        TracedPopulation traced = traced(finding("R-1", "P", "dB"), finding("R-2", "Q", "dB/100 m"));
        IncomparableMarginsException refusal = refusal(traced);
        assertEquals(Differ.IN_PRODUCT, refusal.differ());
        assertTrue(refusal.getMessage().endsWith("name one of P, Q"), refusal.getMessage());
        assertEquals(
                2,
                SuspectRanking.of(traced, SuspectQuestion.of(Evidence.FAILURES), 10)
                        .reels());
    }

    @Test
    void marginsInDifferentUnitsAreNotRankedTogether() {
        met(lot("AC-1", LotKind.ANNEALED_CONDUCTOR), 0, 1);
        IncomparableMarginsException refusal =
                refusal(traced(finding("R-1", "P", "dB/100 m"), finding("R-2", "P", "dB")));
        assertEquals(Differ.IN_UNIT, refusal.differ());
        assertTrue(refusal.getMessage().contains("(dB, dB/100 m)"), refusal.getMessage());
    }

    private static IncomparableMarginsException refusal(TracedPopulation traced) {
        return assertThrows(
                IncomparableMarginsException.class,
                () -> SuspectRanking.of(traced, SuspectQuestion.of(Evidence.MARGINS), 10));
    }

    /** A product or a unit that only a reel left out has keeps nobody from ranking the rest. */
    @Test
    void whatWasLeftOutDoesNotCount() {
        met(lot("AC-1", LotKind.ANNEALED_CONDUCTOR), 0);
        TracedPopulation traced = traced(finding("R-1", "P", "dB"), finding("R-2", "Q", "ohm"));
        assertEquals(Set.of("P"), traced.products());
        assertEquals(Set.of("dB"), traced.units());
        assertEquals(
                1,
                SuspectRanking.of(traced, SuspectQuestion.of(Evidence.MARGINS), 10)
                        .reels());
    }

    @Test
    void aTimeDoesNotEndBeforeItBegins() {
        Property property = Property.named("return-loss");
        assertFalse(
                new ReelSelection("north", property, NINE, NINE, null).from().isAfter(NINE));
        assertThrows(
                IllegalArgumentException.class,
                () -> new ReelSelection("north", property, NINE, NINE.minusNanos(1), null));
    }
}
