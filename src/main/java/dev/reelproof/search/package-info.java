/** How texts are searched: what of them counts, and how well one answers a question. Plain Java; the store writes and asks what this says. */
@NullMarked
package dev.reelproof.search;

import org.jspecify.annotations.NullMarked;
