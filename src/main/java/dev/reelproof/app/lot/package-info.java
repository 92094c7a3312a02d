/** Loading lots, and asking what was made from what. */
@NullMarked
package dev.reelproof.app.lot;

import org.jspecify.annotations.NullMarked;
