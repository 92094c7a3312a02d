/**
 * What may be done with a reel that its test did not accept without conditions: used as it is, regraded or shortened, asked for by one
 * person and approved by another.
 */
@NullMarked
package dev.reelproof.record.concession;

import org.jspecify.annotations.NullMarked;
