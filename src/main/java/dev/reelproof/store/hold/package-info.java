/** Rows of holds and releases. */
package dev.reelproof.store.hold;
