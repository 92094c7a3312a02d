package dev.reelproof.judgement;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The limit of one requirement over one grid: evaluated once, for every series on that grid. */
final class LimitColumn {
    private final double[] limitAt;
    private final int from;
    private final int to;
    private final double[] lower;
    private final double[] upper;

    /**
     * @param grid the frequencies; absent for single values, which have one point
     */
    LimitColumn(Requirement requirement, @Nullable FrequencyGrid grid) {
        Domain domain = requirement.domain();
        this.limitAt = grid == null ? new double[] {ofSingleValue(domain)} : grid.toArray();
        int first = 0;
        int last = limitAt.length;
        if (grid != null) {
            while (first < last && !domain.holds(limitAt[first])) {
                first++;
            }
            while (last > first && !domain.holds(limitAt[last - 1])) {
                last--;
            }
        }
        this.from = first;
        this.to = last;
        Limit limit = requirement.limit();
        this.lower = column(limit.lower(), Double.NEGATIVE_INFINITY);
        this.upper = column(limit.upper(), Double.POSITIVE_INFINITY);
    }

    /** A single value stated for a whole range meets the limit where it begins. */
    private static double ofSingleValue(Domain domain) {
        return domain instanceof Domain.Range range ? range.from() : 0;
    }

    private double[] column(Optional<Bound> bound, double without) {
        double[] column = new double[limitAt.length];
        for (int i = from; i < to; i++) {
            column[i] = bound.isPresent() ? bound.get().at(limitAt[i]) : without;
        }
        return column;
    }

    /** The first point that is judged. */
    int from() {
        return from;
    }

    /** Behind the last point that is judged. */
    int to() {
        return to;
    }

    /** The frequency that the limit of a point is taken at, MHz; 0 where the limit has none. */
    double limitAt(int index) {
        return limitAt[index];
    }

    /** How far a value lies above the lower bound; without end where there is none. */
    double aboveLower(double value, int index) {
        return value - lower[index];
    }

    /** How far a value lies below the upper bound; without end where there is none. */
    double belowUpper(double value, int index) {
        return upper[index] - value;
    }

    /** How far an unrounded value lies on the good side of the nearer bound; on the limit within the noise of arithmetic. */
    double margin(double value, int index) {
        double ofLower = value - lower[index];
        double ofUpper = upper[index] - value;
        double margin = Math.min(ofLower, ofUpper);
        return margin < 0 && -margin <= Comparison.noise(value, ofUpper <= ofLower ? upper[index] : lower[index])
                ? 0
                : margin;
    }

    /** The nearer bound. */
    double nearer(double value, int index) {
        return upper[index] - value <= value - lower[index] ? upper[index] : lower[index];
    }
}
