/** Rows of concessions and their decisions. */
@NullMarked
package dev.reelproof.store.concession;

import org.jspecify.annotations.NullMarked;
