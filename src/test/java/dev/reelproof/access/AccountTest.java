package dev.reelproof.access;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What an account may, what a change makes of it, and that the last administrator stays. */
class AccountTest {
    private static final AccountChange CLOSED = new AccountChange(null, null, false, null);
    private static final AccountChange TECHNICIAN = new AccountChange(null, Set.of(Role.TECHNICIAN), null, null);

    private static Account account(String name, boolean active, boolean demo, Role... roles) {
        return new Account(name, "A Person", Set.of(roles), active, demo, Instant.EPOCH);
    }

    private static void check(Account changed, AccountChange change, boolean isDemo, Account... others) {
        List<Account> all = new java.util.ArrayList<>(List.of(others));
        all.add(changed);
        changed.requireAdministratorAfter(change.of(changed), all, isDemo);
    }

    @Test
    void theLastAdministratorStays() {
        Account last = account("anna", true, false, Role.ADMINISTRATOR);
        Account technician = account("ben", true, false, Role.TECHNICIAN);
        Account closed = account("carl", false, false, Role.ADMINISTRATOR);
        Account demo = account("demo-admin", true, true, Role.ADMINISTRATOR);
        for (AccountChange change : List.of(CLOSED, TECHNICIAN)) {
            assertThrows(LastAdministratorException.class, () -> check(last, change, false, technician, closed, demo));
            assertDoesNotThrow(() -> check(last, change, true, demo), "in the demo its administrator counts");
            assertDoesNotThrow(() -> check(last, change, false, account("dora", true, false, Role.ADMINISTRATOR)));
        }
        assertDoesNotThrow(() -> check(last, new AccountChange("Anna", null, null, null), false));
        assertDoesNotThrow(() -> check(technician, CLOSED, false, last));
    }

    @Test
    void aNameSpeltOtherwiseIsNoOtherAdministrator() {
        Account last = account("anna", true, false, Role.ADMINISTRATOR);
        assertThrows(
                LastAdministratorException.class,
                () -> check(last, CLOSED, false, account("ANNA", true, false, Role.ADMINISTRATOR)));
    }

    @Test
    void theDemosAccountsSignInInTheDemoAlone() {
        assertTrue(account("a", true, true).maySignIn(true));
        assertFalse(account("a", true, true).maySignIn(false));
        assertTrue(account("a", true, false).maySignIn(false));
        assertFalse(account("a", false, false).maySignIn(true));
    }

    @Test
    void aChangeLeavesWhatItDoesNotName() {
        Account before = account("anna", true, false, Role.ENGINEER);
        assertEquals(before, new AccountChange(null, null, null, null).of(before));
        assertEquals(account("anna", true, false, Role.TECHNICIAN), TECHNICIAN.of(before));
        assertEquals(Map.of("roles", Map.of("from", "engineer", "to", "technician")), TECHNICIAN.differences(before));
        assertEquals(Map.of("active", Map.of("from", true, "to", false)), CLOSED.differences(before));
    }

    @Test
    void aNewPasswordAndAClosedAccountEndItsSessions() {
        Account account = account("anna", true, false, Role.ENGINEER);
        Password password = Password.of("correct horse battery");
        AccountChange newPassword = new AccountChange(null, null, null, password);
        assertTrue(newPassword.endsSessionsOf(account));
        assertEquals(Map.of("password", "changed"), newPassword.differences(account));
        assertTrue(CLOSED.endsSessionsOf(account));
        assertFalse(TECHNICIAN.endsSessionsOf(account));
    }
}
