package dev.reelproof.network;

/** Units of frequency in a Touchstone file: how many make one MHz, or how many MHz one makes. */
enum FrequencyUnit {
    HZ("Hz", 1e6, 1),
    KHZ("kHz", 1e3, 1),
    MHZ("MHz", 1, 1),
    GHZ("GHz", 1, 1e3);

    private final String symbol;
    private final double perMegahertz;
    private final double megahertzEach;

    FrequencyUnit(String symbol, double perMegahertz, double megahertzEach) {
        this.symbol = symbol;
        this.perMegahertz = perMegahertz;
        this.megahertzEach = megahertzEach;
    }

    String symbol() {
        return symbol;
    }

    /** A frequency in MHz. A power of ten below one is divided by, since only whole ones are exact. */
    double megahertz(double value) {
        return value / perMegahertz * megahertzEach;
    }
}
