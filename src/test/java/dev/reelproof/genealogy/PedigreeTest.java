package dev.reelproof.genealogy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.genealogy.Pedigree.Link;
import dev.reelproof.genealogy.Pedigree.Member;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PedigreeTest {

    @Test
    void countsALotReachedOverTwoWaysOnceAtItsLeastDepth() {
        // R goes into A and B, both into C; R also goes into C by itself.
        Pedigree up = pedigree(Direction.ANCESTORS, "C", "R>A", "R>B", "A>C", "B>C", "R>C");
        assertEquals(List.of("C 0", "A 1", "B 1", "R 1"), places(up));
        assertEquals(List.of("A>C", "B>C", "R>C", "R>A", "R>B"), links(up));
    }

    @Test
    void goesDownToo() {
        Pedigree down = pedigree(Direction.DESCENDANTS, "R", "R>B", "R>A", "A>C", "C>D");
        assertEquals(List.of("R 0", "A 1", "B 1", "C 2", "D 3"), places(down));
        assertEquals(List.of("R>A", "R>B", "A>C", "C>D"), links(down));
    }

    @Test
    void endsOnACircle() {
        assertEquals(List.of("A 0", "C 1", "B 2"), places(pedigree(Direction.ANCESTORS, "A", "A>B", "B>C", "C>A")));
    }

    @Test
    void isTheSameWhateverTheOrderOfTheRows() {
        String[] links = {"R>A", "R>B", "A>C", "B>C", "C>D", "A>D", "P>A", "P>B"};
        Pedigree expected = pedigree(Direction.ANCESTORS, "D", links);
        Random random = new Random(4711);
        for (int i = 0; i < 20; i++) {
            List<String> shuffled = new ArrayList<>(Arrays.asList(links));
            Collections.shuffle(shuffled, random);
            assertEquals(expected, pedigree(Direction.ANCESTORS, "D", shuffled.toArray(String[]::new)));
        }
    }

    @Test
    void standsAlone() {
        assertEquals(List.of("A 0"), places(Pedigree.of(id("A"), Direction.ANCESTORS, members("A"), List.of())));
    }

    @Test
    void refusesRowsThatDoNotFitTogether() {
        List<Link> link = List.of(link("A>B"));
        assertThrows(
                IllegalArgumentException.class, () -> Pedigree.of(id("A"), Direction.DESCENDANTS, members("A"), link));
        assertThrows(
                IllegalArgumentException.class,
                () -> Pedigree.of(id("A"), Direction.DESCENDANTS, members("A", "B", "C"), link));
        assertThrows(
                IllegalArgumentException.class,
                () -> Pedigree.of(id("A"), Direction.DESCENDANTS, members("A", "B", "B"), link));
        assertThrows(
                IllegalArgumentException.class,
                () -> Pedigree.of(id("C"), Direction.DESCENDANTS, members("A", "B"), link));
        assertThrows(
                IllegalArgumentException.class,
                () -> Pedigree.of(id("A"), Direction.ANCESTORS, members("A", "B"), link));
    }

    private static Pedigree pedigree(Direction direction, String start, String... links) {
        String[] names = Arrays.stream(links)
                .flatMap(link -> Arrays.stream(link.split(">")))
                .distinct()
                .toArray(String[]::new);
        return Pedigree.of(
                id(start),
                direction,
                members(names),
                Arrays.stream(links).map(PedigreeTest::link).toList());
    }

    private static LotId id(String name) {
        return new LotId(name);
    }

    private static List<Member> members(String... names) {
        return Arrays.stream(names)
                .map(name -> new Member(id(name), "north", LotKind.UNIT, new Amount(1, "km"), null, null, null))
                .toList();
    }

    private static Link link(String text) {
        String[] ends = text.split(">");
        return new Link(id(ends[0]), id(ends[1]), new Amount(1, "km"));
    }

    private static List<String> places(Pedigree pedigree) {
        return pedigree.lots().stream()
                .map(entry -> entry.lot().id() + " " + entry.depth())
                .toList();
    }

    private static List<String> links(Pedigree pedigree) {
        return pedigree.links().stream()
                .map(link -> link.from() + ">" + link.to())
                .toList();
    }
}
