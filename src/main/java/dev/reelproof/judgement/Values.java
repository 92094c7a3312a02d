package dev.reelproof.judgement;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.ObjIntConsumer;
import java.util.function.ToDoubleBiFunction;
import org.jspecify.annotations.Nullable;

/** The values that one statistic is taken of: those of some series that are judged and have no obstacle, in the order of the series. */
final class Values {
    private final @Nullable Units units;
    private final List<Series> series;
    private final LimitColumns limits;
    private final double[] corrected;

    /**
     * @param units those that the values belong to; absent for the whole reel
     */
    Values(@Nullable Units units, List<Series> series, LimitColumns limits) {
        this.units = units;
        this.series = List.copyOf(series);
        this.limits = limits;
        this.corrected = column(Series::corrected);
    }

    /** One of the values. */
    record Point(Series series, int index) {
        double value() {
            return series.corrected(index);
        }

        private double frequencyOrZero() {
            Double megahertz = series.megahertz(index);
            return megahertz == null ? 0 : megahertz;
        }

        /** Whether it stands before another: at a lower frequency, or at the same of a lower subject. */
        private boolean isBefore(Point other) {
            int order = Double.compare(frequencyOrZero(), other.frequencyOrZero());
            return order < 0 || (order == 0 && series.subject().compareTo(other.series.subject()) < 0);
        }

        String words() {
            return value() + " (" + series.subject().words() + ")";
        }
    }

    void forEach(ObjIntConsumer<Series> action) {
        for (Series one : series) {
            LimitColumn limit = limits.over(one.grid());
            for (int i = limit.from(); i < limit.to(); i++) {
                if (one.obstacle(i) == null) {
                    action.accept(one, i);
                }
            }
        }
    }

    private double[] column(ToDoubleBiFunction<Series, Integer> of) {
        double[] column = new double
                [series.stream()
                        .map(Series::grid)
                        .map(limits::over)
                        .mapToInt(limit -> limit.to() - limit.from())
                        .sum()];
        int[] count = {0};
        forEach((one, index) -> column[count[0]++] = of.applyAsDouble(one, index));
        return count[0] == column.length ? column : java.util.Arrays.copyOf(column, count[0]);
    }

    @Nullable
    Units units() {
        return units;
    }

    List<Series> series() {
        return series;
    }

    int count() {
        return corrected.length;
    }

    /** The values at the reference. Not to be changed. */
    double[] corrected() {
        return corrected;
    }

    /** The values as sent, without the sign of an unbalance. */
    double[] sent() {
        return column(Series::sentMagnitude);
    }

    List<Influence> influences() {
        List<Influence> influences = new ArrayList<>();
        forEach((one, index) -> influences.add(one.influence(index)));
        return influences;
    }

    Point smallest() {
        return extreme(1);
    }

    Point greatest() {
        return extreme(-1);
    }

    private Point extreme(int sign) {
        Point[] found = new Point[1];
        forEach((one, index) -> {
            Point point = new Point(one, index);
            int order = found[0] == null ? -1 : Double.compare(sign * point.value(), sign * found[0].value());
            if (order < 0 || (order == 0 && point.isBefore(found[0]))) {
                found[0] = point;
            }
        });
        return Objects.requireNonNull(found[0], "a statistic has a value");
    }
}
