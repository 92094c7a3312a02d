/** Rows of products, reels and where they went. */
package dev.reelproof.store.reel;
