/** Issuing, finding and verifying certificates. */
package dev.reelproof.app.certificate;
