/** HTTP of products and reels. */
@NullMarked
package dev.reelproof.api.reel;

import org.jspecify.annotations.NullMarked;
