package dev.reelproof.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An approval needs another person, once. */
class ApprovalTest {
    private static final OffsetDateTime ASKED = OffsetDateTime.parse("2026-03-02T14:05:00Z");
    private static final OffsetDateTime DECIDED = ASKED.plusHours(1);
    private static final Approval OPEN = Approval.open(7, "release", "reel/R-1", "remeasured", "anna", ASKED);

    private static Caller person(String name) {
        return new Caller(Caller.Kind.PERSON, name, null, Set.of(Role.ENGINEER), null);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void anotherPersonDecides(boolean approve) {
        assertEquals(
                new Approval(
                        7, "release", "reel/R-1", "remeasured", "anna", ASKED, approve, "Ben", DECIDED, "looked at"),
                OPEN.decidedBy(person("Ben"), approve, "looked at", DECIDED));
    }

    @ParameterizedTest
    @ValueSource(strings = {"anna", "ANNA", "ａｎｎａ"})
    void theRequesterDoesNotHoweverTheNameIsSpelt(String name) {
        ApprovalConflictException refusal = assertThrows(
                ApprovalConflictException.class, () -> OPEN.decidedBy(person(name), true, "fine", DECIDED));
        assertTrue(refusal.getMessage().contains("somebody else must decide"), refusal.getMessage());
    }

    @Test
    void aDecisionStays() {
        Approval refused = OPEN.decidedBy(person("Ben"), false, "no", DECIDED);
        ApprovalConflictException refusal = assertThrows(
                ApprovalConflictException.class, () -> refused.decidedBy(person("carl"), true, "yes", DECIDED));
        assertTrue(refusal.getMessage().contains("was refused by Ben on 2026-03-02"), refusal.getMessage());
    }

    @Test
    void aDecisionHasAPersonATimeAndAReason() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new Approval(7, "release", "s", "r", "anna", ASKED, true, null, DECIDED, "why"));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Approval(7, "release", "s", "r", "anna", ASKED, null, "Ben", null, null));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Approval(7, "release", "s", "r", "anna", ASKED, true, "Anna", DECIDED, "why"));
    }
}
