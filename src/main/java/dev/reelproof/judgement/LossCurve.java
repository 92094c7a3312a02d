package dev.reelproof.judgement;

import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Measured insertion loss of one pair per metre, at any frequency within its sweep.
 *
 * <p>Interpolates linearly in √f between two grid points, because the greater part, the loss of the conductors, grows so; common
 * practice, no source. Has no value outside the sweep.
 */
final class LossCurve {
    private final double[] megahertz;
    private final double[] lossPerMetre;
    private final Map<FrequencyGrid, double[]> onGrids = new HashMap<>();

    LossCurve(Sweep insertionLoss, Length length) {
        this.megahertz = insertionLoss.grid().toArray();
        this.lossPerMetre = insertionLoss.values();
        for (int i = 0; i < lossPerMetre.length; i++) {
            lossPerMetre[i] /= length.metres();
        }
        onGrids.put(insertionLoss.grid(), lossPerMetre);
    }

    /** Loss in dB/m on some grid, NaN outside the sweep. Not to be changed. */
    double[] on(FrequencyGrid grid) {
        return onGrids.computeIfAbsent(
                grid, other -> Arrays.stream(other.toArray()).map(this::at).toArray());
    }

    /** A loss that is known nowhere on a grid. */
    static double[] unknown(FrequencyGrid grid) {
        double[] unknown = new double[grid.size()];
        Arrays.fill(unknown, Double.NaN);
        return unknown;
    }

    private double at(double frequency) {
        int found = Arrays.binarySearch(megahertz, frequency);
        if (found >= 0) {
            return lossPerMetre[found];
        }
        int above = -found - 1;
        if (above == 0 || above == megahertz.length) {
            return Double.NaN;
        }
        double low = Math.sqrt(megahertz[above - 1]);
        double high = Math.sqrt(megahertz[above]);
        double share = (Math.sqrt(frequency) - low) / (high - low);
        return lossPerMetre[above - 1] + share * (lossPerMetre[above] - lossPerMetre[above - 1]);
    }
}
