package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Property;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which requirement answers for a property, and which for a finding. */
class LimitAtTest {
    private static final LimitSet CATEGORY_6A = LimitSamples.shipped("category-6a-cable");

    private static LimitAt next(double megahertz) {
        return LimitAt.of(CATEGORY_6A, "next", Optional.of(megahertz), Optional.of(4))
                .orElseThrow();
    }

    @Test
    void givesTheRequirementThatHoldsAtTheFrequency() {
        LimitAt at = next(100);
        assertEquals(Property.NEXT, at.requirement().property());
        assertEquals(Optional.of(100.0), at.megahertz());
        assertEquals(List.of("next"), at.requirements());
    }

    @Test
    void theEndsOfTheRangeAreIn() {
        Domain.Range range = (Domain.Range) next(100).requirement().domain();
        assertEquals(Optional.of(range.from()), next(range.from()).megahertz());
        assertEquals(Optional.of(range.to()), next(range.to()).megahertz());
        assertThrows(IllegalArgumentException.class, () -> next(Math.nextUp(range.to())));
        assertThrows(IllegalArgumentException.class, () -> next(Math.nextDown(range.from())));
    }

    @Test
    void saysWhereThereIsALimit() {
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> LimitAt.of(CATEGORY_6A, "next", Optional.empty(), Optional.empty()));
        assertTrue(refused.getMessage().contains("from 1.0 to 500.0 MHz; give a frequency"), refused.getMessage());
    }

    @Test
    void hasNothingOnWhatTheSetDoesNotJudge() {
        assertEquals(Optional.empty(), LimitAt.of(CATEGORY_6A, "strip-force", Optional.empty(), Optional.empty()));
    }

    /** One id may stand for several ranges of pair counts; each product meets one of them. */
    @Test
    void aRequirementIsFoundAsItHoldsForTheProduct() {
        LimitSet set = LimitSamples.shipped("us-terminating-cable-24awg", 2);
        int checked = 0;
        for (Requirement requirement : set.requirements()) {
            int pairs =
                    requirement.pairs().map(PairCount::from).orElse(set.pairs().from());
            assertEquals(Optional.of(requirement), set.requirement(requirement.id(), pairs), requirement.id());
            checked++;
        }
        assertTrue(checked > 0);
        Requirement some = set.requirements().stream()
                .filter(requirement -> requirement.pairs().isPresent())
                .findFirst()
                .orElseThrow();
        int beyond = some.pairs().get().to() + 1;
        assertTrue(set.requirement(some.id(), beyond)
                .filter(found -> found.equals(some))
                .isEmpty());
        assertEquals(Optional.empty(), set.requirement("no-such-requirement", 4));
    }

    @Test
    void alongFrequencyAreThoseThatASweepIsJudgedBy() {
        assertEquals(
                List.of("next"),
                CATEGORY_6A.alongFrequency(Property.NEXT, 4).stream()
                        .map(Requirement::id)
                        .toList());
        assertEquals(List.of(), CATEGORY_6A.alongFrequency(Property.CONDUCTOR_RESISTANCE, 4));
    }
}
