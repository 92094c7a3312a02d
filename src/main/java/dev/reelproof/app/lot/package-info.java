/** Loading lots, and asking what was made from what. */
package dev.reelproof.app.lot;
