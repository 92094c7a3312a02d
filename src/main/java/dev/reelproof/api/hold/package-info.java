/** HTTP of holds. */
package dev.reelproof.api.hold;
