/** Whether what went into a lot and what came out of it can be so: copper, lengths, stretches of a parent. */
@NullMarked
package dev.reelproof.genealogy.balance;

import org.jspecify.annotations.NullMarked;
