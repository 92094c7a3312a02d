package dev.reelproof.network;

/** How a Touchstone file writes a complex number as two. */
enum NumberFormat {
    /** Magnitude and angle in degrees. */
    MA,
    /** Magnitude in dB of an amplitude, and angle in degrees. */
    DB,
    /** Real and imaginary part. */
    RI
}
