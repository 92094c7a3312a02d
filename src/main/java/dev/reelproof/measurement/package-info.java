/**
 * What was measured on a reel: readings, sweeps, conditions and equipment, and the product that the reel claims to be.
 *
 * <p>May use {@code quantity}.
 */
@NullMarked
package dev.reelproof.measurement;

import org.jspecify.annotations.NullMarked;
