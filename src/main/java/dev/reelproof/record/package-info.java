/**
 * What is kept of a reel and its tests: the reel as registered, each record as it was when it was taken, its originals.
 *
 * <p>May use {@code quantity}, {@code measurement}, {@code judgement} and {@code digest}.
 */
@NullMarked
package dev.reelproof.record;

import org.jspecify.annotations.NullMarked;
