package dev.reelproof.access;

import java.time.Instant;
import java.util.List;
import java.util.Set;

/**
 * A person who may sign in.
 *
 * @param name what the person signs in with
 * @param displayName how others read of the person
 * @param roles the roles held
 * @param active whether the person may sign in
 * @param demo whether it is one of the demo's accounts, which are good for nothing outside the demo
 * @param created when it was made
 */
public record Account(String name, String displayName, Set<Role> roles, boolean active, boolean demo, Instant created) {

    public Account {
        roles = Set.copyOf(roles);
    }

    /** What accounts are compared by: names differ neither by case nor by the form of their characters. */
    public String key() {
        return AccountName.fold(name);
    }

    /** The account as the audit trail names it. */
    public String subject() {
        return subject(name);
    }

    /** How the audit trail names the account of that name. */
    public static String subject(String name) {
        return "account/" + name;
    }

    /**
     * Whether the account counts here at all.
     *
     * @param isDemo whether this installation is the demo
     */
    public boolean countsIn(boolean isDemo) {
        return !demo || isDemo;
    }

    /**
     * Whether the person may sign in.
     *
     * @param isDemo whether this installation is the demo
     */
    public boolean maySignIn(boolean isDemo) {
        return active && countsIn(isDemo);
    }

    /**
     * Refuses a change after which nobody could manage accounts any more.
     *
     * @param changed this account as it would be
     * @param all the accounts as they are, this one among them
     * @param isDemo whether this installation is the demo
     * @throws LastAdministratorException when this is the only administrator who may sign in, and would be none
     */
    public void requireAdministratorAfter(Account changed, List<Account> all, boolean isDemo) {
        boolean isLost = isAdministrator(isDemo) && !changed.isAdministrator(isDemo);
        if (isLost && all.stream().noneMatch(other -> !other.key().equals(key()) && other.isAdministrator(isDemo))) {
            throw new LastAdministratorException();
        }
    }

    private boolean isAdministrator(boolean isDemo) {
        return maySignIn(isDemo) && roles.contains(Role.ADMINISTRATOR);
    }
}
