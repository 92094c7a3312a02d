/**
 * A certificate's life: issued, in question, superseded, withdrawn. Its state is worked out whole from recorded facts each time that
 * somebody asks; nothing keeps it, and so nothing goes stale.
 *
 * <p>May use what {@code certificate} may.
 */
@NullMarked
package dev.reelproof.certificate.life;

import org.jspecify.annotations.NullMarked;
