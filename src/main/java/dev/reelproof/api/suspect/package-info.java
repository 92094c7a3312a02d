/** HTTP of suspects. */
@NullMarked
package dev.reelproof.api.suspect;

import org.jspecify.annotations.NullMarked;
