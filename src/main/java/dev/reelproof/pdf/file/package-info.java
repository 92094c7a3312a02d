/** Reads what claims to be a certificate: its number, its pages and attachments. Files of strangers: every size has a bound. */
@NullMarked
package dev.reelproof.pdf.file;

import org.jspecify.annotations.NullMarked;
