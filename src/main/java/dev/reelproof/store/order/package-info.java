/** Rows of customer orders and of the certificates asked for by order. */
@NullMarked
package dev.reelproof.store.order;

import org.jspecify.annotations.NullMarked;
