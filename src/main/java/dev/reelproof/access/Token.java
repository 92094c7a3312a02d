package dev.reelproof.access;

import java.time.Instant;
import java.util.Set;

/**
 * A token that a station or script sends in place of a sign-in; without its secret.
 *
 * @param id names it, in its secret too
 * @param name what it is for
 * @param roles the roles held
 * @param plant the one plant that it may act at; null for every plant
 * @param demo whether it is the demo's, which opens nothing outside the demo
 * @param created when it was made
 * @param expires when it ends; null when it does not
 * @param revoked when it was revoked; null when it was not
 */
public record Token(
        String id,
        String name,
        Set<Role> roles,
        String plant,
        boolean demo,
        Instant created,
        Instant expires,
        Instant revoked) {}
