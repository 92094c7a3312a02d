/** The reels of a time with all that they have behind them. */
package dev.reelproof.store.suspect;
