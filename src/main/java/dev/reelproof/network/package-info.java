/**
 * Network-analyser data: S-parameters from Touchstone files, renormalised, taken to mixed mode, and the sweeps that follow from
 * them.
 *
 * <p>Plain Java on primitive columns; streams come from outside. May use {@code quantity} and {@code measurement}.
 */
@NullMarked
package dev.reelproof.network;

import org.jspecify.annotations.NullMarked;
