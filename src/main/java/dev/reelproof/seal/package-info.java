/**
 * Tamper evidence: the append-only Merkle log of a plant, its signed heads, and the proofs that a row is in it.
 *
 * <p>Plain Java. Knows neither the database nor what a record is: a leaf is a kind, a plant, an identifier and digests.
 */
@NullMarked
package dev.reelproof.seal;

import org.jspecify.annotations.NullMarked;
