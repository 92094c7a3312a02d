/** What certificates are drawn with: the canvas of a page, the embedded typeface, the colours, numbers as printed. Knows no certificate. */
@NullMarked
package dev.reelproof.pdf.page;

import org.jspecify.annotations.NullMarked;
