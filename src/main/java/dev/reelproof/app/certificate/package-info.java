/** Issuing, finding and verifying certificates. */
@NullMarked
package dev.reelproof.app.certificate;

import org.jspecify.annotations.NullMarked;
