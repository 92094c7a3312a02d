/** Placing and releasing holds, and what asks whether a reel is under one. */
@NullMarked
package dev.reelproof.app.hold;

import org.jspecify.annotations.NullMarked;
