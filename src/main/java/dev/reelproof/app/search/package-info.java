/** Searches over reels, orders, certificates, customers and products. */
@NullMarked
package dev.reelproof.app.search;

import org.jspecify.annotations.NullMarked;
