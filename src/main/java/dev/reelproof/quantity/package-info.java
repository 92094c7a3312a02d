/**
 * Lengths, temperatures, units and frequency grids: the words in which everything else is said.
 *
 * <p>May use the JDK and the units library only.
 */
@NullMarked
package dev.reelproof.quantity;

import org.jspecify.annotations.NullMarked;
