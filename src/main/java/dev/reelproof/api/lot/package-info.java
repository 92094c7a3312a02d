/** HTTP of lots and pedigrees. */
@NullMarked
package dev.reelproof.api.lot;

import org.jspecify.annotations.NullMarked;
