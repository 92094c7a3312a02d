/** The texts and digests of the limit sets and uncertainty models that judged. */
package dev.reelproof.store.limits;
