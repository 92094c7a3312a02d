/**
 * Draws a certificate's content as PDF/A-3b. Decides nothing and rounds nothing: what is printed stands in the content.
 *
 * <p>May use {@code certificate} and PDFBox; {@code pdf.page} has what is drawn with, {@code pdf.plot} the plots.
 */
@NullMarked
package dev.reelproof.pdf;

import org.jspecify.annotations.NullMarked;
