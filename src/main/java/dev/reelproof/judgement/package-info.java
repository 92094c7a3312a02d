/**
 * Judgement of a result against a limit set: findings with margin and worst place, the verdict, and the chain behind any figure.
 *
 * <p>May use {@code correction} and {@code limit}, and what these use.
 */
@NullMarked
package dev.reelproof.judgement;

import org.jspecify.annotations.NullMarked;
