/** The limit sets and uncertainty models that this installation judges by. */
@NullMarked
package dev.reelproof.app.limits;

import org.jspecify.annotations.NullMarked;
