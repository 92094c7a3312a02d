package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import java.util.Arrays;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Values at the reference, and why a value could not be brought there.
 *
 * @param values one a point; NaN where there is a reason
 * @param obstacles one a point, absent where there is none; empty when no point has one
 */
record CorrectedColumn(double[] values, @Nullable Obstacle[] obstacles) {
    static final @Nullable Obstacle[] NO_OBSTACLES = {};

    static CorrectedColumn of(double[] values) {
        return new CorrectedColumn(values, NO_OBSTACLES);
    }

    /** A column of which no value can be corrected. */
    static CorrectedColumn notCorrected(int size, OutsideLawException reason) {
        double[] values = new double[size];
        Arrays.fill(values, Double.NaN);
        @Nullable Obstacle[] obstacles = new @Nullable Obstacle[size];
        Arrays.fill(obstacles, obstacle(reason));
        return new CorrectedColumn(values, obstacles);
    }

    static Obstacle obstacle(OutsideLawException reason) {
        return new Obstacle(Obstacle.Kind.CORRECTION_NOT_POSSIBLE, Map.of("why", String.valueOf(reason.getMessage())));
    }

    /** Point by point the worse of this column and another; a point that either cannot tell has no value. */
    CorrectedColumn orWorse(CorrectedColumn other, boolean lowerIsWorse) {
        double[] worse = values.clone();
        for (int i = 0; i < worse.length; i++) {
            if (isWorse(other.values[i], worse[i], lowerIsWorse) || Double.isNaN(other.values[i])) {
                worse[i] = other.values[i];
            }
        }
        if (obstacles.length == 0) {
            return new CorrectedColumn(worse, other.obstacles);
        }
        @Nullable Obstacle[] both = obstacles.clone();
        for (int i = 0; i < other.obstacles.length; i++) {
            both[i] = both[i] == null ? other.obstacles[i] : both[i];
        }
        return new CorrectedColumn(worse, both);
    }

    static boolean isWorse(double one, double other, boolean lowerIsWorse) {
        return lowerIsWorse ? one < other : one > other;
    }
}
