package dev.reelproof.judgement;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ObjIntConsumer;
import java.util.function.ToDoubleBiFunction;
import org.jspecify.annotations.Nullable;

/** The values that one statistic is taken of: those of some series that are judged and have no obstacle, in the order of the series. */
final class Values {
    private static final int GROWTH = 2;

    private final @Nullable Units units;
    private final List<Series> series;

    /** Of each value: the number of its series in the list, its place there, and the value at the reference. */
    private final int[] seriesOf;

    private final int[] indexOf;
    private final double[] corrected;

    /**
     * @param units those that the values belong to; absent for the whole reel
     */
    Values(@Nullable Units units, List<Series> series, LimitColumns limits) {
        this.units = units;
        this.series = series;
        int[] owners = new int[series.size()];
        int[] places = new int[series.size()];
        int count = 0;
        for (int i = 0; i < series.size(); i++) {
            Series one = series.get(i);
            LimitColumn limit = limits.over(one.grid());
            for (int at = limit.from(); at < limit.to(); at++) {
                if (one.obstacle(at) == null) {
                    if (count == owners.length) {
                        owners = Arrays.copyOf(owners, GROWTH * count);
                        places = Arrays.copyOf(places, GROWTH * count);
                    }
                    owners[count] = i;
                    places[count++] = at;
                }
            }
        }
        this.seriesOf = Arrays.copyOf(owners, count);
        this.indexOf = Arrays.copyOf(places, count);
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
        for (int i = 0; i < seriesOf.length; i++) {
            action.accept(series.get(seriesOf[i]), indexOf[i]);
        }
    }

    private double[] column(ToDoubleBiFunction<Series, Integer> of) {
        double[] column = new double[seriesOf.length];
        for (int i = 0; i < column.length; i++) {
            column[i] = of.applyAsDouble(series.get(seriesOf[i]), indexOf[i]);
        }
        return column;
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
        int found = 0;
        for (int i = 1; i < corrected.length; i++) {
            double difference = sign * (corrected[i] - corrected[found]);
            if (difference < 0 || (difference == 0 && point(i).isBefore(point(found)))) {
                found = i;
            }
        }
        return point(found);
    }

    private Point point(int number) {
        return new Point(series.get(seriesOf[number]), indexOf[number]);
    }
}
