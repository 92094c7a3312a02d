package dev.reelproof.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How long tokens and sessions may be used, and what wrong passwords cost. */
class CredentialsTest {
    private static final Instant NOW = Instant.parse("2026-03-02T14:05:00Z");
    private static final Duration IDLE = Duration.ofHours(1);

    private static Token token(String plant, boolean demo, Instant expires, Instant revoked) {
        return new Token("id", "bench", Set.of(Role.TECHNICIAN), plant, demo, NOW, expires, revoked);
    }

    @Test
    void aTokenIsGoodUntilItEndsOrIsRevoked() {
        assertTrue(token(null, false, null, null).isValid(NOW, false));
        assertTrue(token(null, false, NOW.plusMillis(1), null).isValid(NOW, false));
        assertFalse(token(null, false, NOW, null).isValid(NOW, false));
        assertFalse(token(null, false, null, NOW.plusSeconds(9)).isValid(NOW, false));
    }

    @Test
    void theDemosTokenIsGoodInTheDemoAlone() {
        assertTrue(token(null, true, null, null).isValid(NOW, true));
        assertFalse(token(null, true, null, null).isValid(NOW, false));
    }

    @Test
    void anAdministratorOfAPlantManagesItsTokensAlone() {
        Caller ofEvery = new Caller(Caller.Kind.PERSON, "a", null, Set.of(Role.ADMINISTRATOR), null);
        Caller ofNorth = new Caller(Caller.Kind.PERSON, "n", "north", Set.of(Role.ADMINISTRATOR), null);
        for (String plant : new String[] {"north", "south", null}) {
            assertTrue(token(plant, false, null, null).isManagedBy(ofEvery));
            assertEquals("north".equals(plant), token(plant, false, null, null).isManagedBy(ofNorth));
        }
    }

    @Test
    void aSecretNamesItsToken() {
        TokenSecret made = TokenSecret.random();
        assertEquals(Optional.of(made), TokenSecret.read(made.text()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "reelproof_", "reelproof_0123456789abcdef_short", "other_0123456789abcdef_"})
    void whatHasNotTheFormOfASecretIsNone(String sent) {
        assertEquals(Optional.empty(), TokenSecret.read(sent));
    }

    private static WebSession session(boolean ofCompany, boolean active, boolean demo, Instant seen, Instant expires) {
        return new WebSession("digest", "csrf", "anna", "Anna", Set.of(), ofCompany, active, demo, seen, expires, null);
    }

    @Test
    void aSessionEndsAfterItsTimeAndUnused() {
        Instant later = NOW.plusSeconds(1);
        assertTrue(session(false, true, false, NOW, later).isValid(NOW, IDLE, false, false));
        assertFalse(session(false, true, false, NOW, NOW).isValid(NOW, IDLE, false, false));
        assertTrue(session(false, true, false, NOW.minus(IDLE).plusMillis(1), later)
                .isValid(NOW, IDLE, false, false));
        assertFalse(session(false, true, false, NOW.minus(IDLE), later).isValid(NOW, IDLE, false, false));
        assertFalse(new WebSession("d", "c", "a", "A", Set.of(), false, true, false, NOW, later, NOW)
                .isValid(NOW, IDLE, false, false));
    }

    @Test
    void aSessionEndsWithWhatItStandsOn() {
        Instant later = NOW.plusSeconds(1);
        assertFalse(session(false, false, false, NOW, later).isValid(NOW, IDLE, false, true), "a closed account");
        assertFalse(session(false, true, true, NOW, later).isValid(NOW, IDLE, false, true), "no demo");
        assertTrue(session(false, true, true, NOW, later).isValid(NOW, IDLE, true, true));
        assertTrue(session(true, true, false, NOW, later).isValid(NOW, IDLE, false, true));
        assertFalse(session(true, true, false, NOW, later).isValid(NOW, IDLE, false, false), "no provider");
    }

    @Test
    void useIsWrittenDownOnceAMinuteOfAnIdleHour() {
        Instant later = NOW.plusSeconds(1);
        assertFalse(session(false, true, false, NOW.minusSeconds(60), later).isSeenAnew(NOW, IDLE));
        assertTrue(session(false, true, false, NOW.minusSeconds(61), later).isSeenAnew(NOW, IDLE));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "4, 0", "5, 1", "6, 2", "7, 4", "8, 8", "9, 15", "10, 15", "2147483647, 15"})
    void wrongPasswordsInARowLockANameForLonger(int failures, int minutes) {
        assertEquals(
                Duration.ofMinutes(minutes), LockoutPolicy.lockedFor(failures).orElse(Duration.ZERO));
    }
}
