/** HTTP of lots and pedigrees. */
package dev.reelproof.api.lot;
