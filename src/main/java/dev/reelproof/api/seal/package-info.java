/** HTTP of the log: its public key, its heads, its proofs; and the clockwork that keeps it going. */
@NullMarked
package dev.reelproof.api.seal;

import org.jspecify.annotations.NullMarked;
