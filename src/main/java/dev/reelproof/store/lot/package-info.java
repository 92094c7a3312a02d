/** Lots, runs and inputs in their tables, the queue of reports that wait, and the recursive questions about them. */
package dev.reelproof.store.lot;
