package dev.reelproof.judgement;

import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Measured insertion loss of one pair per metre, at any frequency within its sweep.
 *
 * <p>Interpolates linearly in √f between two grid points, because the greater part, the loss of the conductors, grows so; common
 * practice, no source. Has no value outside the sweep.
 */
final class LossCurve {
    private final FrequencyGrid grid;
    private final double[] megahertz;
    private final double[] lossPerMetre;

    LossCurve(Sweep insertionLoss, Length length) {
        this.grid = insertionLoss.grid();
        this.megahertz = grid.toArray();
        this.lossPerMetre = insertionLoss.values();
        for (int i = 0; i < lossPerMetre.length; i++) {
            lossPerMetre[i] /= length.metres();
        }
    }

    /** Loss in dB/m at a point of some grid; empty outside the sweep. */
    OptionalDouble at(FrequencyGrid other, int index) {
        return grid.equals(other) ? OptionalDouble.of(lossPerMetre[index]) : at(other.megahertz(index));
    }

    private OptionalDouble at(double frequency) {
        int found = Arrays.binarySearch(megahertz, frequency);
        if (found >= 0) {
            return OptionalDouble.of(lossPerMetre[found]);
        }
        int above = -found - 1;
        if (above == 0 || above == megahertz.length) {
            return OptionalDouble.empty();
        }
        double low = Math.sqrt(megahertz[above - 1]);
        double high = Math.sqrt(megahertz[above]);
        double share = (Math.sqrt(frequency) - low) / (high - low);
        return OptionalDouble.of(lossPerMetre[above - 1] + share * (lossPerMetre[above] - lossPerMetre[above - 1]));
    }
}
