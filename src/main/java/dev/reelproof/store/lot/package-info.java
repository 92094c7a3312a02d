/** Lots, runs and inputs in their tables, the queue of reports that wait, and the recursive questions about them. */
@NullMarked
package dev.reelproof.store.lot;

import org.jspecify.annotations.NullMarked;
