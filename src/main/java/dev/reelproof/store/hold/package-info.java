/** Rows of holds and releases. */
@NullMarked
package dev.reelproof.store.hold;

import org.jspecify.annotations.NullMarked;
