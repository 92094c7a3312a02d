/** The limit sets and uncertainty models that this installation judges by. */
package dev.reelproof.app.limits;
