/** Rows of certificates. */
package dev.reelproof.store.certificate;
