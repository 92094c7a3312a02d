/** HTTP of customer orders. */
@NullMarked
package dev.reelproof.api.order;

import org.jspecify.annotations.NullMarked;
