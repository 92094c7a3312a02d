/**
 * What a report of a lot needs to be admitted, what it waits for, and what is wrong with it.
 *
 * <p>May use {@code genealogy} and {@code genealogy.balance}.
 */
@NullMarked
package dev.reelproof.genealogy.admission;

import org.jspecify.annotations.NullMarked;
