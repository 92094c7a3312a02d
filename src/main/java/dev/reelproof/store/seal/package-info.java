/**
 * Keeps the log: what waits for its place, leaves, nodes, heads in the database and outside, and checks all rows against it.
 *
 * <p>Speaks JDBC throughout: the check runs without the service, on a connection of its own, and must read exactly what was sealed.
 */
@NullMarked
package dev.reelproof.store.seal;

import org.jspecify.annotations.NullMarked;
