package dev.reelproof.network;

import dev.reelproof.measurement.NetworkTerms;
import java.util.List;
import java.util.Optional;

/**
 * The reference impedance of each row of a matrix.
 *
 * <p>That of a conductor is what the file says; that of a mode what the upload says of the port, else what the file says. A file that
 * gives for a mode half the differential reference of the limit set (50 ohm for 100) and no {@code [Mixed-Mode Order]} is taken to
 * give that of a conductor: analysers write there the impedance of their own ports. The differential mode then has twice, the common mode
 * half of it, and a warning says so. Common practice, no source.
 *
 * @param ohm of each row
 * @param warnings what the reader of the result should know
 */
record ModeReferences(double[] ohm, List<String> warnings) {
    private static final double DIFFERENTIAL_PER_PORT = 2;
    private static final double COMMON_PER_PORT = 0.5;

    static ModeReferences of(NetworkData data, PortMap rows, NetworkTerms terms) {
        double[] ohm = data.referenceOhm();
        Optional<String> warning = Optional.empty();
        for (int row = 1; row <= ohm.length; row++) {
            Port port = rows.port(row);
            Double stated = port.referenceOhm();
            if (stated != null) {
                ohm[row - 1] = stated;
            } else if (port.mode() != PortMode.SINGLE
                    && data.order().isEmpty()
                    && ohm[row - 1] * DIFFERENTIAL_PER_PORT == terms.differentialOhm()) {
                double ofConductor = ohm[row - 1];
                ohm[row - 1] =
                        ofConductor * (port.mode() == PortMode.DIFFERENTIAL ? DIFFERENTIAL_PER_PORT : COMMON_PER_PORT);
                if (warning.isEmpty()) {
                    warning =
                            Optional.of("The " + ofConductor + " ohm that " + data.file() + " states were taken as the"
                                    + " reference of a conductor, so that a differential port has "
                                    + ofConductor * DIFFERENTIAL_PER_PORT + " ohm and a common port "
                                    + ofConductor * COMMON_PER_PORT
                                    + " ohm. Where that is not so, give 'reference' of the port.");
                }
            }
        }
        return new ModeReferences(ohm, warning.stream().toList());
    }
}
