/** Readers of products and reels. May use the core. */
package dev.reelproof.intake.reel;
