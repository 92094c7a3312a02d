/** Digests by which kept bytes are known again. Uses no other room. */
@NullMarked
package dev.reelproof.digest;

import org.jspecify.annotations.NullMarked;
