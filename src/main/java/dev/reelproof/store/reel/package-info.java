/** Rows of products, reels and where they went. */
@NullMarked
package dev.reelproof.store.reel;

import org.jspecify.annotations.NullMarked;
