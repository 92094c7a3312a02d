/** HTTP of products and reels. */
package dev.reelproof.api.reel;
