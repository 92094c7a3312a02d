/** Digests by which kept bytes are known again. Uses no other room. */
package dev.reelproof.digest;
