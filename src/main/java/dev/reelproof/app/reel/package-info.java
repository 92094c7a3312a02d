/** Registering products and reels, and telling where a reel went. */
@NullMarked
package dev.reelproof.app.reel;

import org.jspecify.annotations.NullMarked;
