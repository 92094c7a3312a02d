/** Asking what failing reels have in common. */
package dev.reelproof.app.suspect;
