/** HTTP of certificates and their verification. */
@NullMarked
package dev.reelproof.api.certificate;

import org.jspecify.annotations.NullMarked;
