/** Rows of lots, runs and inputs, and the recursive questions about them. */
package dev.reelproof.store.lot;
