/** Use cases of customer orders: what they lack, their certificates together, the hand-off. */
@NullMarked
package dev.reelproof.app.order;

import org.jspecify.annotations.NullMarked;
