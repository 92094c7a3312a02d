/**
 * Correction to reference temperature and length, and what is derived from measured parts: one law a class, each with its source.
 *
 * <p>May use {@code quantity} and {@code measurement}. Pure functions; no law is chosen here: the limit set names it.
 */
@NullMarked
package dev.reelproof.correction;

import org.jspecify.annotations.NullMarked;
