package dev.reelproof.certificate;

import org.jspecify.annotations.Nullable;

/**
 * What is told of a certificate beside it, to whoever gets it.
 *
 * @param number its number
 * @param reel the reel that it certifies
 * @param product the product's code; null when it does not say
 * @param limits the title of what the reel was judged by; null when it does not say
 * @param verdict the word of the verdict; null when it does not say
 * @param pdfSha256 digest of its PDF, hexadecimal
 */
public record HandOffLine(
        String number,
        String reel,
        @Nullable String product,
        @Nullable String limits,
        @Nullable String verdict,
        String pdfSha256) {}
