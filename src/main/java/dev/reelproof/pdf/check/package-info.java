/** Checks a certificate's PDF by what it carries, as anybody may who has nothing else: neither network nor database is asked. */
@NullMarked
package dev.reelproof.pdf.check;

import org.jspecify.annotations.NullMarked;
