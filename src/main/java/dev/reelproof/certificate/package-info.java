/**
 * What a certificate says, as plain data: its number, its content, and whether a reel may have one.
 *
 * <p>May use {@code judgement} and what it uses, {@code record} and {@code wording}. Knows nothing of PDF, storage or the clock.
 */
@NullMarked
package dev.reelproof.certificate;

import org.jspecify.annotations.NullMarked;
