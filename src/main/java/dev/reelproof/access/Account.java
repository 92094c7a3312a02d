package dev.reelproof.access;

import java.time.Instant;
import java.util.Set;

/**
 * A person who may sign in.
 *
 * @param name what the person signs in with
 * @param displayName how others read of the person
 * @param roles the roles held
 * @param active whether the person may sign in
 * @param demo whether it is one of the demo's, which open nothing outside the demo
 * @param created when it was made
 */
public record Account(
        String name, String displayName, Set<Role> roles, boolean active, boolean demo, Instant created) {}
