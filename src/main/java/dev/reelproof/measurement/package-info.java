/**
 * What was measured on a reel: readings, sweeps, conditions and equipment, and the product that the reel claims to be.
 *
 * <p>May use {@code quantity}.
 */
package dev.reelproof.measurement;
