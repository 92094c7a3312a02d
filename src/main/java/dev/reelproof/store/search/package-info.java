/** Rows that a search looks through. */
@NullMarked
package dev.reelproof.store.search;

import org.jspecify.annotations.NullMarked;
