/** HTTP of the one search. */
@NullMarked
package dev.reelproof.api.search;

import org.jspecify.annotations.NullMarked;
