/** Readers of products and reels. May use the core. */
@NullMarked
package dev.reelproof.intake.reel;

import org.jspecify.annotations.NullMarked;
