/** The reels of a time with all that they have behind them. */
@NullMarked
package dev.reelproof.store.suspect;

import org.jspecify.annotations.NullMarked;
