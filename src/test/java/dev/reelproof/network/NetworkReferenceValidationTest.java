package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.NetworkTerms;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Source of the figures: scikit-rf 0.15.4, a general-purpose open-source library, by src/test/python/network_reference.py, which is
 * rerun in continuous integration where the package installs.
 */
class NetworkReferenceValidationTest {
    /**
     * The files print 12 decimals, 5e-13 of 1 at most (in degrees 5e-13 of 180, less in radian; in dB 0.115 of that). Renormalising divides by 1 − r S, which for
     * these networks (largest singular value 0.9, |r| ≤ 1/3) is 0.7 or more, twice; eight entries add up. 1e-10 leaves a decade and
     * a half above that, and the table prints 11 decimals.
     */
    private static final double TOLERANCE = 1e-10;

    private static InputStream resource(String name) {
        return NetworkReferenceValidationTest.class.getResourceAsStream("/network/" + name);
    }

    /** Ports paired consecutively: pair by pair, all at the near end. */
    static PortMap consecutive(int ports) {
        List<Port> map = new ArrayList<>();
        for (int port = 1; port <= ports; port++) {
            map.add(new Port(port, End.NEAR, (port + 1) / 2, port % 2 == 1 ? Conductor.A : Conductor.B));
        }
        return PortMap.of(map);
    }

    /** The differential modes of two pairs, without conductors. */
    private static PortMap twoDifferential() {
        return PortMap.of(List.of(
                Port.ofMode(1, End.NEAR, 1, PortMode.DIFFERENTIAL),
                Port.ofMode(2, End.NEAR, 2, PortMode.DIFFERENTIAL)));
    }

    @Test
    void everyEntryOfTheModesIsWhatScikitRfGives() throws IOException {
        Map<String, NetworkData> files = new HashMap<>();
        int compared = 0;
        try (BufferedReader table =
                new BufferedReader(new InputStreamReader(resource("reference.csv"), StandardCharsets.US_ASCII))) {
            for (String line = table.readLine(); line != null; line = table.readLine()) {
                if (line.startsWith("#") || line.startsWith("file,")) {
                    continue;
                }
                String[] cells = line.split(",");
                NetworkData data = files.get(cells[0]);
                if (data == null) {
                    try (InputStream in = resource(cells[0])) {
                        data = new TouchstoneReader().read(cells[0], 0, in);
                    }
                    files.put(cells[0], data);
                }
                compare(data, cells);
                compared++;
            }
        }
        assertEquals(5 * (4 * 4 * 4 + 5 * 8 * 8 + 2 * 2), compared);
    }

    private static void compare(NetworkData data, String[] cells) {
        double megahertz = Double.parseDouble(cells[2]);
        int index = 0;
        while (Math.abs(data.megahertz(index) - megahertz) > 1e-9 * megahertz) {
            index++;
        }
        NetworkTerms terms = new NetworkTerms(100, Double.parseDouble(cells[1]), false);
        PortMap rows = (data.ports() == 2 ? twoDifferential() : consecutive(data.ports())).rowsOf(data);
        ComplexMatrix modes = new MixedMode(rows, terms).of(data.matrix(index), data.referenceOhm());
        int row = Integer.parseInt(cells[3]);
        int column = Integer.parseInt(cells[4]);
        String place = String.join(",", cells);
        assertEquals(Double.parseDouble(cells[5]), modes.re(row, column), TOLERANCE, place);
        assertEquals(Double.parseDouble(cells[6]), modes.im(row, column), TOLERANCE, place);
    }
}
