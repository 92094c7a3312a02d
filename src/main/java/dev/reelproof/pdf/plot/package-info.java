/** Draws the plots of a certificate: sweeps against their limits over frequency. */
package dev.reelproof.pdf.plot;
