/** HTTP of holds. */
@NullMarked
package dev.reelproof.api.hold;

import org.jspecify.annotations.NullMarked;
