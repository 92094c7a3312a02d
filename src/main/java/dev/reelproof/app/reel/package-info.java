/** Registering products and reels, and telling where a reel went. */
package dev.reelproof.app.reel;
