/**
 * Signs a finished PDF and checks such a signature: PAdES (ETSI EN 319 142-1) by the DSS library and BouncyCastle, which nothing else
 * here knows. It knows no certificate of ours: bytes go in, bytes come out.
 */
@NullMarked
package dev.reelproof.pdf.signature;

import org.jspecify.annotations.NullMarked;
