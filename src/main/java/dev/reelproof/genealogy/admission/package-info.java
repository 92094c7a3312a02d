/** Which reports of lots are admitted, which wait for their parents, and which are refused. */
@NullMarked
package dev.reelproof.genealogy.admission;

import org.jspecify.annotations.NullMarked;
