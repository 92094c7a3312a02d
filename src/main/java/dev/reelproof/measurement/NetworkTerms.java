package dev.reelproof.measurement;

/**
 * What a limit set says of how network-analyser data is to be read.
 *
 * @param differentialOhm reference impedance of the differential mode in ohm; positive and finite
 * @param commonOhm reference impedance of the common mode in ohm; positive and finite
 * @param lossOfDisturbing whether ACR-F is the far-end crosstalk less the insertion loss of the disturbing pair; otherwise that
 *     of the disturbed one
 */
public record NetworkTerms(double differentialOhm, double commonOhm, boolean lossOfDisturbing) {

    /** 100 ohm differential, 25 ohm common, the loss of the disturbed pair: the defaults of limit sets. */
    public static final NetworkTerms USUAL = new NetworkTerms(100, 25, false);

    public NetworkTerms {
        requireOhm("differential", differentialOhm);
        requireOhm("common", commonOhm);
    }

    private static void requireOhm(String mode, double ohm) {
        if (!(ohm > 0 && Double.isFinite(ohm))) {
            throw new IllegalArgumentException("the reference impedance of the " + mode
                    + " mode must be positive and finite, not " + ohm + " ohm");
        }
    }
}
