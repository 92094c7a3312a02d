/**
 * The demo: at the edge, loads the invented plant of {@code demo-data/} through the routes that users use.
 *
 * <p>Knows the HTTP contract alone; nothing imports it.
 */
@NullMarked
package dev.reelproof.demo;

import org.jspecify.annotations.NullMarked;
