/**
 * What many results say together: which lot, machine or other cause upstream failing reels have in common, and how strong the evidence
 * is. It is an association, never proof of a cause.
 *
 * <p>May use {@code quantity}, {@code measurement}, {@code judgement} and {@code genealogy}, and Apache Commons Statistics.
 */
@NullMarked
package dev.reelproof.analysis;

import org.jspecify.annotations.NullMarked;
