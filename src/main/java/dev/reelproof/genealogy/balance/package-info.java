/**
 * What of a lot can hardly be so: copper and length beyond what went in, stretches that two lots claim.
 *
 * <p>May use {@code genealogy} and {@code correction}.
 */
@NullMarked
package dev.reelproof.genealogy.balance;

import org.jspecify.annotations.NullMarked;
