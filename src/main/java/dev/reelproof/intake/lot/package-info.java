/** Readers of lots: JSON, JSON lines and CSV. May use the core. */
package dev.reelproof.intake.lot;
