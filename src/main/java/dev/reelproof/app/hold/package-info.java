/** Placing and releasing holds, and what asks whether a reel is under one. */
package dev.reelproof.app.hold;
