package dev.reelproof.judgement;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;

/** Adds up the doubt in values, one after another, and keeps the most doubtful. */
final class DoubtTally {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /**
     * From so many standard uncertainties on, the doubt in a value is taken to be that there, 6e-16, which is no less than it is; how far
     * beyond it lies is told by no exact figure.
     */
    static final double FAR = 8;

    private static final double DOUBT_OF_FAR = NORMAL.survivalProbability(FAR);

    private double sum;
    private double greatest = -1;
    private double nearest = Double.POSITIVE_INFINITY;
    private @Nullable Series series;
    private int index;

    /**
     * Adds a value.
     *
     * @param aboveLower how far it lies above a lower bound; without end where there is none
     * @param belowUpper how far it lies below an upper bound; without end where there is none
     * @param standard its standard uncertainty, 0 or more
     */
    void add(Series newSeries, int newIndex, double aboveLower, double belowUpper, double standard) {
        double toNearer = Math.min(aboveLower, belowUpper);
        double distance = standard == 0 ? atCertainty(toNearer) : toNearer / standard;
        note(newSeries, newIndex, distance > FAR ? DOUBT_OF_FAR : exactly(aboveLower, belowUpper, standard), distance);
    }

    /** Adds a value that lies at least so many standard uncertainties from its limits, more than {@link #FAR}. */
    void addFar(Series newSeries, int newIndex, double distance) {
        note(newSeries, newIndex, DOUBT_OF_FAR, distance);
    }

    private void note(Series newSeries, int newIndex, double doubt, double distance) {
        sum += doubt;
        if (doubt > greatest || (doubt == greatest && distance < nearest)) {
            greatest = doubt;
            nearest = distance;
            series = newSeries;
            index = newIndex;
        }
    }

    private static double atCertainty(double margin) {
        return margin >= 0 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    }

    private static double exactly(double aboveLower, double belowUpper, double standard) {
        if (standard == 0) {
            return 1;
        }
        return beyond(aboveLower / standard) + beyond(belowUpper / standard);
    }

    private static double beyond(double distance) {
        return distance == Double.POSITIVE_INFINITY ? 0 : NORMAL.survivalProbability(distance);
    }

    /** The doubt in all; absent when nothing was added. */
    @Nullable
    Doubt of(LimitColumns limits) {
        if (series == null) {
            return null;
        }
        double value = series.corrected(index);
        return new Doubt(
                series.subject(),
                null,
                series.megahertz(index),
                value,
                limits.over(series.grid()).margin(value, index),
                Math.max(0, 1 - greatest),
                sum);
    }
}
