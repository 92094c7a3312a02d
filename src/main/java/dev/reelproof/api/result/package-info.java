/** HTTP of results, records and findings. */
@NullMarked
package dev.reelproof.api.result;

import org.jspecify.annotations.NullMarked;
