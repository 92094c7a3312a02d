/** Rows of certificates. */
@NullMarked
package dev.reelproof.store.certificate;

import org.jspecify.annotations.NullMarked;
