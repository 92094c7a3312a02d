package dev.reelproof.genealogy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Kind;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class PlacementTest {
    // A dozen roundings of 1.1e-16, of places up to 100 km: 1e-10 m.
    private static final double ROUNDINGS = 1e-9;

    private static Placement metres(double from, double to, double onParentFrom, double onParentTo) {
        return new Placement(from, to, "m", onParentFrom, onParentTo, "m");
    }

    private static void assertSame(Stretch expected, Optional<Stretch> got) {
        assertEquals(expected.from(), got.orElseThrow().from(), ROUNDINGS);
        assertEquals(expected.to(), got.orElseThrow().to(), ROUNDINGS);
    }

    @Test
    void addsTheTakeUp() {
        // 1000 m of pair took 1025 m of conductor, from 5000 m on: 212 m lie at 5217.3 m
        Placement laidUp = metres(0, 1000, 5000, 6025);
        assertEquals(1.025, laidUp.takeUp(), 1e-15);
        assertSame(new Stretch(5217.3, 5217.3), laidUp.onParent(new Stretch(212, 212)));
        assertSame(new Stretch(5205, 5225.5), laidUp.onParent(new Stretch(200, 220)));
    }

    @Test
    void turnsRoundWhatWasRewound() {
        for (Placement rewound : new Placement[] {metres(0, 305, 1305, 1000), metres(305, 0, 1000, 1305)}) {
            assertTrue(rewound.isReversed());
            assertSame(new Stretch(1305, 1305), rewound.onParent(new Stretch(0, 0)));
            assertSame(new Stretch(1000, 1005), rewound.onParent(new Stretch(300, 305)));
        }
        assertFalse(metres(305, 0, 1305, 1000).isReversed());
    }

    @Test
    void saysNothingOfPlacesOutside() {
        Placement half = metres(0, 500, 100, 600);
        assertEquals(Optional.empty(), half.onParent(new Stretch(501, 900)));
        assertEquals(Optional.empty(), half.onLot(new Stretch(0, 99)));
        assertSame(new Stretch(590, 600), half.onParent(new Stretch(490, 900)));
    }

    @Test
    void mapsALengthOnACoilThatIsMeasuredByMass() {
        Placement drawn = new Placement(0, 100, "km", 0, 2, "t");
        assertEquals(Kind.MASS, drawn.kindOnParent());
        assertSame(new Stretch(500, 500), drawn.onParent(new Stretch(25_000, 25_000)));
    }

    @Test
    void refusesAStretchThatIsNone() {
        assertThrows(IllegalArgumentException.class, () -> metres(5, 5, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> metres(0, 1, 7, 7));
        assertThrows(IllegalArgumentException.class, () -> metres(-1, 1, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> metres(0, 1, 0, -1));
        assertThrows(IllegalArgumentException.class, () -> metres(0, Double.NaN, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> metres(0, 1, 0, Double.POSITIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> new Placement(0, 1, "ohm", 0, 1, "m"));
    }

    @Property
    void aPlacementOntoTheSamePlacesChangesNothing(
            @ForAll @DoubleRange(min = 0, max = 50_000) double one,
            @ForAll @DoubleRange(min = 0, max = 50_000) double other,
            @ForAll @DoubleRange(min = 0, max = 1) double share) {
        Assume.that(Math.abs(one - other) > 1e-3);
        double place = one + share * (other - one);
        assertSame(new Stretch(place, place), metres(one, other, one, other).onParent(new Stretch(place, place)));
    }

    @Property
    void theWayBackLeadsToWhereItBegan(
            @ForAll @DoubleRange(min = 0, max = 50_000) double from,
            @ForAll @DoubleRange(min = 1, max = 50_000) double length,
            @ForAll @DoubleRange(min = 0, max = 50_000) double onParent,
            @ForAll @DoubleRange(min = 0.5, max = 2) double takeUp,
            @ForAll boolean isRewound,
            @ForAll @DoubleRange(min = 0, max = 1) double low,
            @ForAll @DoubleRange(min = 0, max = 1) double high) {
        double far = onParent + takeUp * length;
        Placement placement =
                isRewound ? metres(from, from + length, far, onParent) : metres(from, from + length, onParent, far);
        Stretch asked = new Stretch(
                from + Math.min(low, high) * length, Math.min(from + length, from + Math.max(low, high) * length));
        Stretch there = placement.onParent(asked).orElseThrow();
        assertSame(asked, placement.onLot(there));
        assertEquals(asked.length() * takeUp, there.length(), ROUNDINGS);
    }

    @Property
    void twoStepsAreTheOneStepThatTheyMakeTogether(
            @ForAll @DoubleRange(min = 1, max = 10_000) double length,
            @ForAll @DoubleRange(min = 0.9, max = 1.2) double first,
            @ForAll @DoubleRange(min = 0.9, max = 1.2) double second,
            @ForAll boolean isFirstRewound,
            @ForAll boolean isSecondRewound,
            @ForAll @DoubleRange(min = 0, max = 1) double share) {
        Placement one = isFirstRewound ? metres(0, length, first * length, 0) : metres(0, length, 0, first * length);
        double middle = first * length;
        Placement two = isSecondRewound ? metres(0, middle, second * middle, 0) : metres(0, middle, 0, second * middle);
        Placement both = isFirstRewound != isSecondRewound
                ? metres(0, length, second * middle, 0)
                : metres(0, length, 0, second * middle);
        Stretch asked = new Stretch(share * length, share * length);
        Stretch through = one.onParent(asked).flatMap(two::onParent).orElseThrow();
        assertSame(both.onParent(asked).orElseThrow(), Optional.of(through));
    }
}
