/** HTTP of suspects. */
package dev.reelproof.api.suspect;
