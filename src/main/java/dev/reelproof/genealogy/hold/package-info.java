/**
 * What is held, and what a release frees of it and of what descends from it.
 *
 * <p>May use {@code genealogy}.
 */
@NullMarked
package dev.reelproof.genealogy.hold;

import org.jspecify.annotations.NullMarked;
