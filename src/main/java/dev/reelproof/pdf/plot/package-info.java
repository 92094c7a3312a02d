/** Draws the plots of a certificate: sweeps against their limits over frequency. */
@NullMarked
package dev.reelproof.pdf.plot;

import org.jspecify.annotations.NullMarked;
