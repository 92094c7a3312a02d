/** Readers of lots: JSON, JSON lines and CSV. May use the core. */
@NullMarked
package dev.reelproof.intake.lot;

import org.jspecify.annotations.NullMarked;
