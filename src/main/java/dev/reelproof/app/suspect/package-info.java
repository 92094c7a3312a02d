/** Asking what failing reels have in common. */
@NullMarked
package dev.reelproof.app.suspect;

import org.jspecify.annotations.NullMarked;
