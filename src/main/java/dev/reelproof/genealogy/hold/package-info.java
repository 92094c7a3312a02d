/** Holds: what they concern, who may release them, and what a release by length frees. */
@NullMarked
package dev.reelproof.genealogy.hold;

import org.jspecify.annotations.NullMarked;
