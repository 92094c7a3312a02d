/**
 * The pages' frames: one layout, filled once at start-up and served as it is.
 *
 * <p>What stands in a page comes later, from the API, by the modules in {@code META-INF/resources/modules}.
 */
@NullMarked
package dev.reelproof.api.page;

import org.jspecify.annotations.NullMarked;
