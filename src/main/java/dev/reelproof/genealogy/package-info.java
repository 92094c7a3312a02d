/**
 * Lots of wire, cable and material: what each was made from, how much of it went in, and what descends from what.
 *
 * <p>May use {@code quantity}.
 */
package dev.reelproof.genealogy;
