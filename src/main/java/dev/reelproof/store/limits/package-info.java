/** The texts and digests of the limit sets and uncertainty models that judged. */
@NullMarked
package dev.reelproof.store.limits;

import org.jspecify.annotations.NullMarked;
