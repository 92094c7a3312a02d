/** HTTP of limit sets. */
@NullMarked
package dev.reelproof.api.limits;

import org.jspecify.annotations.NullMarked;
