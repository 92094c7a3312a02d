package dev.reelproof.genealogy.hold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.genealogy.Pedigree.Link;
import dev.reelproof.genealogy.Pedigree.Member;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.Stretch;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class PartialReleaseTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");
    private static final long SEED = 20260211;

    private final Map<LotId, Member> members = new TreeMap<>();
    private final List<Link> links = new ArrayList<>();

    private void lot(String id, double metres) {
        LotId lot = new LotId(id);
        members.put(lot, new Member(lot, "north", LotKind.UNIT, new Amount(metres, "m"), MORNING, null, null));
    }

    private void link(String parent, String child, double quantity, Placement placement) {
        links.add(new Link(new LotId(parent), new LotId(child), new Amount(quantity, "m"), placement));
    }

    /** The child lies whole where it was taken from its parent. */
    private void cut(String parent, String child, double from, double to) {
        lot(child, to - from);
        link(parent, child, to - from, new Placement(0, to - from, "m", from, to, "m"));
    }

    private String freed(String held, Stretch... released) {
        return PartialRelease.freed(
                        Pedigree.of(new LotId(held), Direction.DESCENDANTS, members.values(), links),
                        new LotId(held),
                        List.of(released))
                .stream()
                .map(LotId::value)
                .collect(Collectors.joining(" "));
    }

    private static Stretch from(double from, double to) {
        return new Stretch(from, to);
    }

    @Test
    void freesWhatLiesWhollyInTheRange() {
        lot("L", 1000);
        cut("L", "A", 0, 300);
        cut("L", "B", 300, 600);
        cut("L", "C", 600, 1000);
        assertEquals("A", freed("L", from(0, 300)));
        assertEquals("A", freed("L", from(0, 599)), "B is released in part alone");
        assertEquals("A B", freed("L", from(0, 600)));
        assertEquals("B", freed("L", from(299, 601)));
        assertEquals("A B", freed("L", from(250, 600), from(0, 250)), "two releases that meet");
        assertEquals("", freed("L", from(0, 250), from(251, 300)), "two releases that leave a gap");
        assertEquals("A B C L", freed("L", from(0, 1000)));
    }

    @Test
    void followsPositionsThroughTakeUpAndReversal() {
        lot("L", 2100);
        lot("P", 2000);
        link("L", "P", 2060, new Placement(0, 2000, "m", 2060, 0, "m"));
        cut("P", "NEAR", 0, 500);
        cut("P", "FAR", 1500, 2000);
        assertEquals("FAR", freed("L", from(0, 515)), "the far end of the pair is the near end of its conductor");
        assertEquals("", freed("L", from(0, 514)));
        assertEquals("NEAR", freed("L", from(1545, 2100)));
        assertEquals("FAR NEAR P", freed("L", from(0, 2060)), "what never went in needs no release");
    }

    @Test
    void holdsWhatCannotBePlaced() {
        lot("L", 1000);
        lot("UNPLACED", 300);
        link("L", "UNPLACED", 300, null);
        cut("UNPLACED", "BELOW", 0, 100);
        assertEquals("L", freed("L", from(0, 1000)));
        assertEquals("", freed("L", from(0, 999)));
    }

    @Test
    void holdsWhatIsPlacedInPartAlone() {
        lot("L", 1000);
        lot("HALF", 300);
        link("L", "HALF", 300, new Placement(0, 150, "m", 0, 150, "m"));
        lot("SCRAP", 300);
        link("L", "SCRAP", 305, new Placement(0, 300, "m", 300, 600, "m"));
        assertEquals("L SCRAP", freed("L", from(0, 1000)), "HALF took 300 m, and 150 m of it are told");
    }

    @Test
    void holdsWhatOneOfSeveralWaysHolds() {
        lot("L", 1000);
        cut("L", "A", 0, 300);
        cut("L", "B", 600, 900);
        lot("PAIR", 300);
        link("A", "PAIR", 300, new Placement(0, 300, "m", 0, 300, "m"));
        link("B", "PAIR", 300, new Placement(0, 300, "m", 0, 300, "m"));
        lot("SPLICED", 200);
        link("A", "SPLICED", 100, new Placement(0, 100, "m", 200, 300, "m"));
        link("B", "SPLICED", 100, new Placement(100, 200, "m", 0, 100, "m"));
        cut("SPLICED", "FIRST", 0, 100);
        cut("SPLICED", "SECOND", 100, 200);
        assertEquals("A FIRST", freed("L", from(0, 300)));
        assertEquals("B SECOND", freed("L", from(600, 900)));
        assertEquals("A B FIRST PAIR SECOND SPLICED", freed("L", from(0, 300), from(600, 900)));
    }

    @Test
    void holdsWhatThePositionsPlaceBeside() {
        lot("L", 1000);
        lot("CORE", 1000);
        link("L", "CORE", 500, new Placement(0, 500, "m", 0, 500, "m"));
        cut("CORE", "BESIDE", 500, 1000);
        cut("CORE", "WITHIN", 0, 500);
        assertEquals("CORE WITHIN", freed("L", from(0, 500)), "BESIDE descends from L, and nothing says how");
    }

    @Test
    void doesNotConcernWhatDoesNotDescend() {
        lot("L", 1000);
        cut("L", "A", 0, 300);
        lot("OTHER", 1000);
        link("OTHER", "A", 300, null);
        Pedigree above = Pedigree.of(new LotId("A"), Direction.ANCESTORS, members.values(), links);
        assertEquals(
                Set.of(new LotId("A")),
                PartialRelease.freed(above, new LotId("L"), List.of(from(0, 300))),
                "an input from elsewhere is another hold's business");
    }

    /** A released stretch more never holds anything that was free; all released frees all that is placed; nothing frees nothing. */
    @Test
    void isMonotonous() {
        for (int round = 0; round < 200; round++) {
            Random random = new Random(SEED + round);
            members.clear();
            links.clear();
            lot("L", 1000);
            List<String> made = new ArrayList<>(List.of("L"));
            for (int i = 0; i < 12; i++) {
                String parent = made.get(random.nextInt(made.size()));
                double length = members.get(new LotId(parent)).quantity().base();
                double from = random.nextDouble() * length / 2;
                cut(parent, "X" + i, from, from + 1 + random.nextDouble() * (length - from - 1));
                made.add("X" + i);
            }
            List<Stretch> released = new ArrayList<>();
            Set<String> before = Set.of("");
            for (int i = 0; i < 6; i++) {
                double from = random.nextDouble() * 900;
                released.add(from(from, from + random.nextDouble() * (1000 - from)));
                Set<String> after =
                        Set.of(freed("L", released.toArray(Stretch[]::new)).split(" "));
                assertTrue(
                        before.stream().allMatch(lot -> lot.isEmpty() || after.contains(lot)),
                        "seed " + (SEED + round));
                before = after;
            }
            Collections.sort(made);
            assertEquals(String.join(" ", made), freed("L", from(0, 1000)), "seed " + (SEED + round));
            assertEquals("", freed("L"), "seed " + (SEED + round));
        }
    }

    @Test
    void takesStretchesFromAStretch() {
        Stretch whole = from(0, 100);
        assertEquals(List.of(whole), whole.without(List.of()));
        assertEquals(List.of(), whole.without(List.of(whole)));
        assertEquals(List.of(from(10, 20), from(50, 100)), whole.without(List.of(from(20, 50), from(0, 10))));
        assertEquals(List.of(from(0, 40)), whole.without(List.of(from(40, 300))));
        assertEquals(List.of(from(50, 100)), from(50, 100).without(List.of(from(0, 20), from(300, 400))));
        assertEquals(List.of(), whole.without(List.of(from(0, 50), from(50 + 1e-12, 100))), "rounding is nothing");
        assertTrue(from(0, 1).hasLength());
        assertFalse(from(5, 5 + 1e-12).hasLength());
    }
}
