package dev.reelproof.access;

import java.time.Instant;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A token that a station or script sends in place of a sign-in; without its secret.
 *
 * @param id names it, in its secret too
 * @param name what it is for
 * @param roles the roles held
 * @param plant the one plant that it may act at; every plant when none is named
 * @param demo whether it is the demo's, which is good for nothing outside the demo
 * @param created when it was made
 * @param expires when it ends, if it does
 * @param revoked when it was revoked, if it was
 */
public record Token(
        String id,
        String name,
        Set<Role> roles,
        @Nullable String plant,
        boolean demo,
        Instant created,
        @Nullable Instant expires,
        @Nullable Instant revoked) {

    public Token {
        roles = Set.copyOf(roles);
    }

    /**
     * Whether a new token may end then: in the future, or never.
     *
     * @param expires absent for never
     */
    public static boolean mayEnd(@Nullable Instant expires, Instant now) {
        return expires == null || now.isBefore(expires);
    }

    /**
     * Whether it may be used.
     *
     * @param isDemo whether this installation is the demo
     */
    public boolean isValid(Instant now, boolean isDemo) {
        return revoked == null && mayEnd(expires, now) && (!demo || isDemo);
    }

    /** Whether that administrator manages it: one of a plant manages the tokens of that plant alone. */
    public boolean isManagedBy(Caller administrator) {
        return administrator.plant() == null || administrator.plant().equals(plant);
    }

    /** The token as the audit trail names it. */
    public String subject() {
        return "token/" + id;
    }
}
