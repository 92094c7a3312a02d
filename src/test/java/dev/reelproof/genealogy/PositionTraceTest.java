package dev.reelproof.genealogy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.genealogy.Pedigree.Link;
import dev.reelproof.genealogy.Pedigree.Member;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class PositionTraceTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");
    private static final Amount LENGTH = new Amount(10_000, "m");

    /** A reel cut from 1000 m on, of a cable on a core, of two pairs with 2 and 3 % of take-up, of two conductors each. */
    private static final List<Link> CABLE = List.of(
            link("JK", "R", 0, 305, 1000, 1305),
            link("CO", "JK", 0, 2000, 0, 2000),
            link("TP1", "CO", 0, 2000, 500, 2540),
            link("TP2", "CO", 0, 2000, 0, 2060),
            link("IC1a", "TP1", 0, 3000, 0, 3090),
            link("IC1b", "TP1", 0, 3000, 3090, 0),
            link("IC2", "TP2", 0, 3000, 100, 3190),
            link("AC", "IC1a", 0, 4000, 0, 4000),
            link("AC", "IC1b", 0, 4000, 4000, 8000));

    private static Link link(String parent, String child, double from, double to, double onFrom, double onTo) {
        return new Link(
                new LotId(parent),
                new LotId(child),
                new Amount(Math.abs(onTo - onFrom), "m"),
                new Placement(from, to, "m", onFrom, onTo, "m"));
    }

    private static Link unplaced(String parent, String child) {
        return new Link(new LotId(parent), new LotId(child), new Amount(1, "m"));
    }

    private static PositionTrace trace(String start, List<Link> links, double from, double to) {
        TreeMap<LotId, Member> members = new TreeMap<>();
        links.stream()
                .flatMap(link -> List.of(link.from(), link.to()).stream())
                .forEach(id -> members.put(id, new Member(id, "north", LotKind.UNIT, LENGTH, MORNING, null, null)));
        LotId id = new LotId(start);
        members.putIfAbsent(id, new Member(id, "north", LotKind.UNIT, LENGTH, MORNING, null, null));
        return PositionTrace.of(Pedigree.of(id, Direction.ANCESTORS, members.values(), links), new Stretch(from, to));
    }

    private static List<String> words(PositionTrace trace) {
        return trace.found().stream()
                .map(found -> found.lot().id() + " "
                        + found.stretches().stream()
                                .map(stretch -> String.format(Locale.ROOT, "%.2f-%.2f", stretch.from(), stretch.to()))
                                .collect(Collectors.joining(" ")))
                .toList();
    }

    private static List<Stretch> around(double at, double within, String unit) {
        LotId id = new LotId("R");
        Member reel = new Member(id, "north", LotKind.REEL, new Amount(305, "m"), MORNING, null, null);
        return PositionTrace.around(Pedigree.of(id, Direction.ANCESTORS, List.of(reel), List.of()), at, within, unit)
                .found()
                .get(0)
                .stretches();
    }

    @Test
    void leavesOffWhatOfTheToleranceLiesBeyondAnEndOfTheReel() {
        assertEquals(List.of(new Stretch(100, 104)), around(102, 2, "m"));
        assertEquals(List.of(new Stretch(0, 3)), around(1, 2, "m"));
        assertEquals(List.of(new Stretch(303, 305)), around(305, 2, "m"));
        assertEquals(List.of(new Stretch(30.48, 30.48)), around(100, 0, "ft"));
    }

    @Test
    void refusesAPlaceThatIsNotOnTheReel() {
        for (double at : new double[] {-1, 305.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> around(at, 2, "m"), "at " + at);
        }
        for (double within : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> around(1, within, "m"), "within " + within);
        }
        assertTrue(assertThrows(IllegalArgumentException.class, () -> around(1, 0, "kg"))
                .getMessage()
                .contains("the reel is measured as length; give the place in that, not in kg"));
    }

    @Test
    void leadsFromAPlaceOnAReelToAStretchOfEachConductor() {
        PositionTrace trace = trace("R", CABLE, 212, 212);
        assertEquals(
                List.of(
                        "R 212.00-212.00",
                        "JK 1212.00-1212.00",
                        "CO 1212.00-1212.00",
                        "TP1 1736.24-1736.24",
                        "TP2 1248.36-1248.36",
                        "IC1a 1788.33-1788.33",
                        "IC1b 1301.67-1301.67",
                        "IC2 1385.81-1385.81",
                        // one wire on two conductors: two places, and not what lies between them
                        "AC 1788.33-1788.33 5301.67-5301.67"),
                words(trace));
        assertEquals(List.of(), trace.ends());
        assertEquals(
                List.of("IC1a", "IC1b"),
                trace.found().get(8).through().stream().map(LotId::value).toList());
    }

    @Test
    void leadsReelsCutFromOneCableToStretchesThatOnlyTouch() {
        List<Link> cut = new ArrayList<>(List.of(link("JK", "R1", 0, 305, 0, 305), link("JK", "R2", 0, 305, 610, 305)));
        assertEquals(
                "JK 0.00-305.00", words(trace("R1", cut.subList(0, 1), 0, 305)).get(1));
        // the second was wound on from its far end
        assertEquals(
                "JK 305.00-610.00",
                words(trace("R2", cut.subList(1, 2), 0, 305)).get(1));
        assertEquals(
                "JK 600.00-600.00",
                words(trace("R2", cut.subList(1, 2), 10, 10)).get(1));
    }

    @Test
    void picksTheOneOfTwoWiresThatWereWeldedTogether() {
        List<Link> welded = List.of(link("A", "W", 0, 600, 9400, 10_000), link("B", "W", 600, 1000, 0, 400));
        assertEquals(List.of("W 599.00-599.00", "A 9999.00-9999.00"), words(trace("W", welded, 599, 599)));
        assertEquals(List.of("W 700.00-700.00", "B 100.00-100.00"), words(trace("W", welded, 700, 700)));
        assertEquals(
                List.of("W 590.00-610.00", "A 9990.00-10000.00", "B 0.00-10.00"), words(trace("W", welded, 590, 610)));
    }

    @Test
    void saysWhereItIsNotKnownInsteadOfGuessing() {
        List<Link> links = List.of(
                link("JK", "R", 0, 305, 0, 305),
                unplaced("PVC", "JK"),
                unplaced("CO", "JK"),
                link("TP", "CO", 0, 9, 0, 9));
        PositionTrace trace = trace("R", links, 3, 3);
        assertEquals(List.of("R 3.00-3.00", "JK 3.00-3.00"), words(trace));
        assertEquals(
                List.of(
                        "CO: lot JK does not say which stretch of it went in",
                        "PVC: lot JK does not say which stretch of it went in",
                        "TP: it went into lot CO, of which the stretch is not known"),
                trace.ends().stream()
                        .map(end -> end.lot() + ": " + end.reason())
                        .toList());
    }

    @Test
    void saysWhereTheReportedPositionsHaveAGap() {
        PositionTrace trace = trace("R", List.of(link("JK", "R", 0, 200, 0, 200)), 250, 250);
        assertEquals(List.of("R 250.00-250.00"), words(trace));
        assertEquals("R", trace.ends().get(0).lot().value());
        assertTrue(trace.ends().get(0).reason().contains("not all of this stretch"));
    }

    @Test
    void refusesAPlaceBeyondTheEnd() {
        assertThrows(IllegalArgumentException.class, () -> trace("R", List.of(), 0, 10_001));
    }

    @Test
    void staysSmallWhereManyWaysLeadToOneLot() {
        // 2^40 ways, one place
        List<Link> diamonds = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            for (String side : Arrays.asList("a", "b")) {
                diamonds.add(link("L" + i + side, "L" + i, 0, 1000, 0, 1000));
                diamonds.add(link("L" + (i + 1), "L" + i + side, 0, 1000, 0, 1000));
            }
        }
        PositionTrace trace = trace("L0", diamonds, 7, 7);
        assertEquals(121, trace.found().size());
        assertTrue(words(trace).contains("L40 7.00-7.00"));
    }

    @Property
    void aStretchLeadsToNoMoreAndNoLessThanItsHalvesDo(
            @ForAll @DoubleRange(min = 0, max = 305) double one,
            @ForAll @DoubleRange(min = 0, max = 305) double two,
            @ForAll @DoubleRange(min = 0, max = 305) double three) {
        double[] places = {one, two, three};
        Arrays.sort(places);
        PositionTrace whole = trace("R", CABLE, places[0], places[2]);
        PositionTrace left = trace("R", CABLE, places[0], places[1]);
        PositionTrace right = trace("R", CABLE, places[1], places[2]);
        for (int i = 0; i < whole.found().size(); i++) {
            assertEquals(
                    length(whole.found().get(i)),
                    length(left.found().get(i)) + length(right.found().get(i)),
                    1e-8);
        }
    }

    private static double length(PositionTrace.Found found) {
        return found.stretches().stream().mapToDouble(Stretch::length).sum();
    }
}
