package dev.reelproof.access;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What is to change of an account; what is absent stays as it is.
 *
 * @param displayName how others read of the person
 * @param roles the roles held
 * @param active whether the person may sign in
 * @param password the password
 */
public record AccountChange(
        @Nullable String displayName,
        @Nullable Set<Role> roles,
        @Nullable Boolean active,
        @Nullable Password password) {

    /** The account after this change. */
    public Account of(Account before) {
        return new Account(
                before.name(),
                displayName == null ? before.displayName() : displayName,
                roles == null ? before.roles() : roles,
                active == null ? before.active() : active,
                before.demo(),
                before.created());
    }

    /** Whether the sessions of the account end by it: it may sign in no more, or its password is another. */
    public boolean endsSessionsOf(Account before) {
        return !of(before).active() || password != null;
    }

    /** What it changes of an account, each with "from" and "to"; of a password only that it changed. */
    public Map<String, Object> differences(Account before) {
        Account after = of(before);
        Map<String, Object> differences = new TreeMap<>();
        put(differences, "displayName", before.displayName(), after.displayName());
        put(differences, "roles", Role.joined(before.roles()), Role.joined(after.roles()));
        put(differences, "active", before.active(), after.active());
        if (password != null) {
            differences.put("password", "changed");
        }
        return differences;
    }

    private static void put(Map<String, Object> differences, String what, Object before, Object after) {
        if (!before.equals(after)) {
            differences.put(what, Map.of("from", before, "to", after));
        }
    }
}
