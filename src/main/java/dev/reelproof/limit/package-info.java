/**
 * Limit sets: requirements with their limits, correction laws, statistics and sources, and the strict reader of {@code limits/}.
 *
 * <p>May use {@code quantity} and, for the names of properties and sites, {@code measurement}.
 */
@NullMarked
package dev.reelproof.limit;

import org.jspecify.annotations.NullMarked;
