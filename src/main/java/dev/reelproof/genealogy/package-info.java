/**
 * Lots of wire, cable and material: what each was made from, how much of it went in, and what descends from what.
 *
 * <p>May use {@code quantity}, and the copper wire of {@code correction}: its law of mass stands there.
 */
@NullMarked
package dev.reelproof.genealogy;

import org.jspecify.annotations.NullMarked;
