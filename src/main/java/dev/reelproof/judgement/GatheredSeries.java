package dev.reelproof.judgement;

import java.util.List;

/**
 * The series that a requirement is judged on, and what stands in the way of judging it.
 *
 * @param series the values, measured and derived
 * @param obstacles empty when nothing is missing
 */
record GatheredSeries(List<Series> series, List<Obstacle> obstacles) {

    GatheredSeries {
        series = List.copyOf(series);
        obstacles = List.copyOf(obstacles);
    }

    /** Whether nothing at all was measured. */
    boolean isEmpty() {
        return series.isEmpty() && obstacles.isEmpty();
    }
}
