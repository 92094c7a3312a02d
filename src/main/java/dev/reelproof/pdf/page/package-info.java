/** What certificates are drawn with: the canvas of a page, the embedded typeface, the colours, numbers as printed. Knows no certificate. */
package dev.reelproof.pdf.page;
